"use strict";
// Sorting, filters and read-outs. The page says everything without this script.
(function () {
  function all(selector, within) {
    return Array.from((within || document).querySelectorAll(selector));
  }

  function make(tag, text) {
    var element = document.createElement(tag);
    if (text) { element.textContent = text; }
    return element;
  }

  function sortKey(row, column) {
    var cell = row.cells[column];
    var key = cell.getAttribute("data-sort");
    return key === null ? cell.textContent.trim() : key;
  }

  // Rows without a key come last, whichever way the column is sorted.
  function sortBy(table, column, direction) {
    var numeric = table.tHead.rows[0].cells[column].getAttribute("data-order") === "number";
    var body = table.tBodies[0];
    var rows = Array.from(body.rows).map(function (row, order) {
      return { row: row, order: order, key: sortKey(row, column) };
    });
    rows.sort(function (a, b) {
      if (a.key === "" || b.key === "") {
        return (a.key === "") - (b.key === "") || a.order - b.order;
      }
      var by = numeric ? Number(a.key) - Number(b.key)
        : a.key.localeCompare(b.key, "en", { numeric: true });
      return by * direction || a.order - b.order;
    });
    rows.forEach(function (entry) { body.appendChild(entry.row); });
    Array.from(table.tHead.rows[0].cells).forEach(function (head, i) {
      if (i === column) {
        head.setAttribute("aria-sort", direction > 0 ? "ascending" : "descending");
      } else {
        head.removeAttribute("aria-sort");
      }
    });
  }

  function headButtons(table) {
    Array.from(table.tHead.rows[0].cells).forEach(function (head, column) {
      var button = make("button", head.textContent);
      button.type = "button";
      button.addEventListener("click", function () {
        sortBy(table, column, head.getAttribute("aria-sort") === "ascending" ? -1 : 1);
      });
      head.textContent = "";
      head.appendChild(button);
    });
  }

  function labelled(bar, label, control) {
    var wrap = make("label");
    wrap.appendChild(make("span", label));
    wrap.appendChild(control);
    bar.appendChild(wrap);
    return wrap;
  }

  function choice(bar, label, values) {
    var select = make("select");
    var any = make("option", "all");
    any.value = "";
    select.appendChild(any);
    values.forEach(function (value) {
      var option = make("option", value);
      option.value = value;
      select.appendChild(option);
    });
    labelled(bar, label, select);
    return select;
  }

  function distinct(rows, mark) {
    var values = rows.map(function (row) { return row.getAttribute(mark); })
      .filter(function (value) { return value !== null; });
    return Array.from(new Set(values)).sort(function (a, b) { return a.localeCompare(b, "en", { numeric: true }); });
  }

  // Heads are out of sight when rows are cards: there a choice sorts.
  function sortChoice(bar, table) {
    var heads = Array.from(table.tHead.rows[0].cells).map(function (head) { return head.textContent; });
    var select = make("select");
    select.appendChild(make("option", "as given"));
    heads.forEach(function (head, i) {
      [["rising", 1], ["falling", -1]].forEach(function (way) {
        var option = make("option", head + ", " + way[0]);
        option.value = i + ":" + way[1];
        select.appendChild(option);
      });
    });
    labelled(bar, "Sort by", select).className = "narrow-only";
    var given = Array.from(table.tBodies[0].rows);
    select.addEventListener("change", function () {
      var way = select.value.split(":");
      if (way.length === 2) {
        sortBy(table, Number(way[0]), Number(way[1]));
      } else {
        given.forEach(function (row) { table.tBodies[0].appendChild(row); });
      }
    });
  }

  function filters(table) {
    var rows = Array.from(table.tBodies[0].rows);
    var bar = make("div");
    bar.className = "tools";
    var depots = distinct(rows, "data-depot");
    var advices = distinct(rows, "data-advice");
    var depot = depots.length > 1 ? choice(bar, "Depot", depots) : null;
    var advice = advices.length > 1 ? choice(bar, "Advice", advices) : null;
    var text = make("input");
    text.type = "search";
    labelled(bar, "Find", text);
    sortChoice(bar, table);
    var found = make("p");
    found.setAttribute("role", "status");
    bar.appendChild(found);

    function apply() {
      var words = text.value.toLowerCase().split(/\s+/).filter(Boolean);
      var shown = 0;
      rows.forEach(function (row) {
        var content = words.length ? row.textContent.toLowerCase() : "";
        var fits = (!depot || !depot.value || row.getAttribute("data-depot") === depot.value)
          && (!advice || !advice.value || row.getAttribute("data-advice") === advice.value)
          && words.every(function (word) { return content.includes(word); });
        row.hidden = !fits;
        shown += fits ? 1 : 0;
      });
      found.textContent = shown === rows.length ? rows.length + " rows" : shown + " of " + rows.length + " rows";
    }

    [depot, advice].forEach(function (select) {
      if (select) { select.addEventListener("change", apply); }
    });
    text.addEventListener("input", apply);
    apply();
    table.parentNode.parentNode.insertBefore(bar, table.parentNode);
  }

  function tables() {
    all("table[data-tools]").forEach(function (table) {
      // A list that fits one glance needs no filter.
      if (table.tBodies[0].rows.length > 7) { filters(table); }
      headButtons(table);
    });
  }

  function readouts() {
    all("figure.chart").forEach(function (figure) {
      var out = figure.querySelector(".readout");
      all(".field", figure).forEach(function (field) {
        // The title stays for those without scripts; with them the line beneath says the same at once.
        field.querySelector("title").remove();
        field.addEventListener("pointerenter", function () { out.textContent = field.getAttribute("data-tip"); });
        field.addEventListener("pointerleave", function () { out.textContent = ""; });
      });
    });
  }

  function printing() {
    all(".print-sheet").forEach(function (button) {
      button.hidden = false;
      button.addEventListener("click", function () { window.print(); });
    });
    var opened = [];
    window.addEventListener("beforeprint", function () {
      opened = all("details:not([open])");
      opened.forEach(function (details) { details.open = true; });
    });
    window.addEventListener("afterprint", function () {
      opened.forEach(function (details) { details.open = false; });
    });
  }

  document.addEventListener("DOMContentLoaded", function () {
    tables();
    readouts();
    printing();
  });
})();
