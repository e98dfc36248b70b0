/* Large view of the photos on a page. Without this script a photo's link simply opens the picture.
   The words of its buttons come from the page (data-… of the first .photos element). */
(function () {
  "use strict";

  var links = Array.prototype.slice.call(document.querySelectorAll(".photo > a"));
  var words = document.querySelector("[data-close]");
  if (!links.length || !words || typeof HTMLDialogElement !== "function") return;

  var view = document.createElement("dialog");
  view.className = "large-view";
  var bar = part("div", "bar");
  var back = button(words.dataset.previous);
  var place = part("span", "place");
  var next = button(words.dataset.next);
  var close = button(words.dataset.close);
  bar.append(back, place, next, close);
  var picture = document.createElement("img");
  var caption = part("div", "words");
  view.append(bar, picture, caption);
  document.body.append(view);
  var at = 0;

  function part(name, className) {
    var element = document.createElement(name);
    element.className = className;
    return element;
  }

  function button(text) {
    var element = document.createElement("button");
    element.type = "button";
    element.textContent = text;
    return element;
  }

  function show(index) {
    at = (index + links.length) % links.length;
    var figure = links[at].parentNode;
    var small = links[at].querySelector("img");
    picture.src = links[at].href;
    picture.alt = small.alt;
    caption.replaceChildren();
    figure.querySelectorAll("figcaption > span").forEach(function (line) {
      caption.append(line.cloneNode(true));
    });
    place.textContent = figure.id + "  " + (at + 1) + " / " + links.length;
    view.setAttribute("aria-label", figure.id);
  }

  links.forEach(function (link, index) {
    link.addEventListener("click", function (event) {
      if (event.ctrlKey || event.metaKey || event.shiftKey) return; // the reader wants another window
      event.preventDefault();
      show(index);
      view.showModal();
      close.focus();
    });
  });

  back.addEventListener("click", function () { show(at - 1); });
  next.addEventListener("click", function () { show(at + 1); });
  close.addEventListener("click", function () { view.close(); });
  view.addEventListener("click", function (event) { if (event.target === picture) view.close(); });
  view.addEventListener("keydown", function (event) {
    if (event.key === "ArrowLeft") show(at - 1);
    else if (event.key === "ArrowRight") show(at + 1);
    else return;
    event.preventDefault();
    event.stopPropagation(); // the theme listens for arrows too
  });
  // The focus goes back to the photo that was last in view, which may not be the one that was pressed.
  view.addEventListener("close", function () {
    picture.removeAttribute("src");
    links[at].focus();
  });
})();
