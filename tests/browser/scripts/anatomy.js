/* What a page refers to and what arrived: every address in its markup, its images, anchors and typefaces. */
async () => {
  await Promise.all(Array.from(document.fonts, (face) => face.load().catch(() => null)));
  await Promise.all(Array.from(document.images, (image) => image.decode().catch(() => null)));
  const whole = (address) => new URL(address, document.baseURI).href;
  const plain = ["href", "src", "poster", "data", "action", "cite", "xlink:href"];
  const says = () => {
    document.querySelectorAll(".md-content details").forEach((part) => { part.open = true; });
    // What only a script offers is no part of what the page holds.
    document.querySelectorAll(".row-filter").forEach((part) => { part.hidden = true; });
    return document.querySelector(".md-content").innerText;
  };
  const addresses = [];
  for (const element of document.querySelectorAll("*")) {
    for (const name of plain) {
      if (element.hasAttribute(name)) addresses.push(whole(element.getAttribute(name)));
    }
    for (const one of (element.getAttribute("srcset") || "").split(",").filter(Boolean)) {
      addresses.push(whole(one.trim().split(/\s+/)[0]));
    }
    for (const found of (element.getAttribute("style") || "").matchAll(/url\(["']?(.*?)["']?\)/g)) {
      addresses.push(whole(found[1]));
    }
  }
  // A closed dialog waits for its picture.
  const pictures = Array.from(document.images).filter((image) => !image.closest("dialog:not([open])"));
  return {
    addresses,
    images: pictures.map((image) => [image.currentSrc || image.outerHTML, image.naturalWidth]),
    ids: Array.from(document.querySelectorAll("[id]"), (element) => element.id),
    fonts: Array.from(document.fonts, (face) => [face.family.replaceAll('"', ""), face.weight, face.status]),
    text: getComputedStyle(document.querySelector(".md-content")).fontFamily,
    title: document.title,
    title_block: Array.from(document.querySelectorAll(".title-block :is(dt, dd)"), (part) => part.innerText),
    ways: Array.from(document.querySelectorAll(".doors, details.index > summary"), (doors) => doors.innerText).join("\n").split("\n"),
    says: says(),
  };
}
