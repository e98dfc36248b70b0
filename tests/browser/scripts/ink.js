/* Every line of text and every drawn border of a page, with its box in the page [px]. */
() => {
  const beside = 2;
  const seen = (element) => {
    for (let at = element; at; at = at.parentElement) {
      if (getComputedStyle(at).clipPath === "inset(50%)") return false;
    }
    return element.checkVisibility({ opacityProperty: true, visibilityProperty: true });
  };
  const place = (box) => [box.left + scrollX, box.top + scrollY, box.right + scrollX, box.bottom + scrollY];
  const texts = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) {
    const node = walker.currentNode;
    const holder = node.parentElement;
    if (!node.data.trim() || holder.closest("script, style, noscript") || !seen(holder)) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    for (const box of range.getClientRects()) {
      if (box.width >= 2) texts.push({ what: node.data.trim().slice(0, 60), box: place(box) });
    }
  }
  const lines = [];
  for (const element of document.body.querySelectorAll("*")) {
    const box = element.getBoundingClientRect();
    if (!box.width || !box.height || !seen(element)) continue;
    const style = getComputedStyle(element);
    const [left, top, right, bottom] = place(box);
    for (const side of ["Top", "Bottom", "Left", "Right"]) {
      const width = parseFloat(style[`border${side}Width`]);
      const bare = ["none", "hidden"].includes(style[`border${side}Style`]);
      const clear = style[`border${side}Color`] === "rgba(0, 0, 0, 0)";
      if (!width || bare || clear) continue;
      // The middle of the line with a little of the paper on both sides: no other line meets it there.
      const [lies, stands] = [(right - left) / 3, (bottom - top) / 3];
      const middle = {
        Top: [left + lies, top - beside, right - lies, top + width + beside],
        Bottom: [left + lies, bottom - width - beside, right - lies, bottom + beside],
        Left: [left - beside, top + stands, left + width + beside, bottom - stands],
        Right: [right - width - beside, top + stands, right + beside, bottom - stands],
      }[side];
      lines.push({ what: `${element.tagName}.${element.className} ${side}`, box: middle });
    }
  }
  return { texts, lines };
}
