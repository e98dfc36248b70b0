/* Rows by result and by who asks. The choice stands in the address (#result=differs&asked-by=inspector), so that a link
   opens the page filtered; an address that names anything else shows all rows. Without this script the controls stay
   hidden and every row shows; on paper every row shows whatever was chosen. */
(function () {
  "use strict";

  var bar = document.querySelector(".row-filter");
  if (!bar) return;

  var rows = list(document.querySelectorAll("tr[data-result]"));
  var choices = list(bar.querySelectorAll("select[data-filter]"));
  var clear = bar.querySelector("button");
  var status = bar.querySelector("[role=status]");

  function list(found) { return Array.prototype.slice.call(found); }

  /* What the address asks, as far as there is such a choice. */
  function asked() {
    var said = new URLSearchParams(location.hash.slice(1));
    choices.forEach(function (choice) {
      var value = said.get(choice.dataset.filter) || "";
      var there = list(choice.options).some(function (option) { return option.value === value; });
      choice.value = there ? value : "";
    });
  }

  function fits(row) {
    return choices.every(function (choice) {
      if (!choice.value) return true;
      if (choice.dataset.filter === "asked-by") return row.dataset.askedBy.split(" ").indexOf(choice.value) >= 0;
      return choice.value === (choice.value === "open" ? row.dataset.open : row.dataset.result);
    });
  }

  function show() {
    var shown = rows.filter(function (row) {
      var fit = fits(row);
      row.classList.toggle("filtered-out", !fit);
      return fit;
    }).length;
    list(document.querySelectorAll("tr.group")).forEach(function (head) {
      var any = list(head.parentNode.querySelectorAll("tr[data-result]")).some(fits);
      head.classList.toggle("filtered-out", !any);
    });
    clear.hidden = !choices.some(function (choice) { return choice.value; });
    var says = clear.hidden ? bar.dataset.all : bar.dataset.some;
    status.textContent = says.replace("{shown}", shown).replace("{all}", rows.length);
  }

  /* Put the choice into the address without a jump and without a step back for each try. */
  function keep() {
    var said = choices.filter(function (choice) { return choice.value; }).map(function (choice) {
      return choice.dataset.filter + "=" + choice.value;
    });
    history.replaceState(null, "", "#" + (said.join("&") || "rows"));
    show();
  }

  choices.forEach(function (choice) { choice.addEventListener("change", keep); });
  clear.addEventListener("click", function () {
    choices.forEach(function (choice) { choice.value = ""; });
    keep();
    choices[0].focus(); // the button is gone
  });
  window.addEventListener("hashchange", function () { asked(); show(); });

  bar.hidden = false;
  asked();
  show();
  if (!clear.hidden) bar.scrollIntoView();
})();
