/* A browser that can't show a closed part on paper by style alone gets the workings opened while it prints. */
(function () {
  "use strict";

  var opened = [];
  window.addEventListener("beforeprint", function () {
    opened = Array.prototype.slice.call(document.querySelectorAll("details:not([open])"));
    opened.forEach(function (working) { working.open = true; });
  });
  window.addEventListener("afterprint", function () {
    opened.forEach(function (working) { working.open = false; });
  });
})();
