/* What sticks out of the window sideways, and what is cut off inside its own box. */
() => {
  const name = (element) => `${element.tagName.toLowerCase()}.${element.className}: ${element.textContent.trim().slice(0, 60)}`;
  const forScreenReaders = (element) => {
    for (let at = element; at; at = at.parentElement) {
      const style = getComputedStyle(at);
      if (style.clipPath === "inset(50%)" || style.visibility === "hidden") return true;
    }
    return false;
  };
  const sticksOut = [];
  const cutOff = [];
  for (const element of document.body.querySelectorAll("*")) {
    const box = element.getBoundingClientRect();
    if (!box.width || !box.height || forScreenReaders(element)) continue;
    if (box.right > innerWidth + 0.5 || box.left < -0.5) sticksOut.push(name(element));
    const hides = getComputedStyle(element).overflowX !== "visible";
    if (hides && element.scrollWidth > element.clientWidth + 1) cutOff.push(name(element));
  }
  const scrolls = document.scrollingElement.scrollWidth > innerWidth;
  return { width: innerWidth, scrolls, sticksOut, cutOff };
}
