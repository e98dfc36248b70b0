/* Points along every drawn line of an SVG document, in the window [px]; filled shapes with no line are left out. */
() => {
  const found = [];
  for (const shape of document.querySelectorAll("line, path, polygon, polyline, circle, rect")) {
    const style = getComputedStyle(shape);
    if (style.stroke === "none" || shape.closest("defs, marker, pattern")) continue;
    const place = shape.getScreenCTM();
    const length = shape.getTotalLength();
    const count = Math.max(40, Math.min(400, Math.round(length / 2)));
    const points = Array.from({ length: count }, (_, number) => {
      const { x, y } = shape.getPointAtLength((length * (number + 0.5)) / count).matrixTransform(place);
      return [x, y];
    });
    found.push({ what: `${shape.tagName}.${shape.getAttribute("class")} ${shape.id}`, points });
  }
  return found;
}
