/* A link into a closed list opens it, in browsers that do not do so themselves. */
(function () {
  "use strict";

  function open() {
    var place = location.hash.length > 1 && document.getElementById(decodeURIComponent(location.hash.slice(1)));
    var list = place && place.closest("details:not([open])");
    if (!list) return;
    list.open = true;
    place.scrollIntoView();
  }

  window.addEventListener("hashchange", open);
  open();
})();
