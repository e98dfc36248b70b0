/* Search runs in a worker, and a browser starts no worker for a page that was opened from disk. There, this stands in
   for one: the worker's script runs in a hidden frame. The script comes by an element and never as written markup, so
   that the page's policy can forbid scripts that stand in the page. */
(function () {
  "use strict";

  if (location.protocol !== "file:") return;

  function FrameWorker(address) {
    var worker = Object.assign(new EventTarget(), {
      onmessage: null,
      postMessage: function (data) { ready.then(function (inside) { tell(inside, data); }); },
      terminate: function () { frame.remove(); },
    });
    worker.addEventListener("message", function (event) { if (worker.onmessage) worker.onmessage(event); });

    var frame = document.createElement("iframe");
    frame.hidden = true;
    var ready = new Promise(function (resolve, reject) {
      frame.addEventListener("load", function () {
        var inside = frame.contentWindow;
        inside.postMessage = function (data) { queueMicrotask(function () { tell(worker, data); }); };
        inside.importScripts = function () {
          return Array.from(arguments).reduce(function (before, next) {
            return before.then(function () { return loaded(inside, next); });
          }, Promise.resolve());
        };
        loaded(inside, address).then(function () { resolve(inside); }, reject);
      }, { once: true });
    });
    ready.catch(function () { worker.dispatchEvent(new Event("error")); });
    document.body.append(frame);
    return worker;
  }

  /* Hand a copy of the data over, as between a page and a worker. */
  function tell(target, data) {
    target.dispatchEvent(new MessageEvent("message", { data: structuredClone(data) }));
  }

  function loaded(inside, address) {
    return new Promise(function (resolve, reject) {
      var script = inside.document.createElement("script");
      script.src = address;
      script.onload = resolve;
      script.onerror = reject;
      inside.document.body.append(script);
    });
  }

  window.IFrameWorker = FrameWorker; // the worker's script looks for this name
  window.Worker = FrameWorker;
})();
