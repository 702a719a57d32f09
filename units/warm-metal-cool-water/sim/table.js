// The table of trials. It lives in this tab's memory and nowhere else: a reload empties it.

export function make_table(body, empty_line) {
  let trials = [];
  let taken_off = [];

  function cell(row, text, label, tag = "td") {
    const node = document.createElement(tag);
    node.textContent = text;
    node.dataset.label = label;
    if (tag === "th") node.scope = "row";
    row.append(node);
  }

  function show() {
    const rows = trials.map((trial, index) => {
      const row = document.createElement("tr");
      cell(row, String(index + 1), "trial", "th");
      cell(row, trial.material, "material");
      cell(row, String(trial.mass_g), "mass, g");
      cell(row, String(trial.start_C), "warm at, °C");
      cell(row, trial.end_C.toFixed(1), "end, °C");
      return row;
    });
    body.replaceChildren(...rows);
    empty_line.hidden = trials.length > 0;
  }

  return {
    add(trial) {
      trials = [...trials, trial];
      taken_off = [];
      show();
    },
    clear() {
      taken_off = trials;
      trials = [];
      show();
      return taken_off.length;
    },
    bring_back() {
      trials = taken_off;
      taken_off = [];
      show();
      return trials.length;
    },
    get count() {
      return trials.length;
    },
    get can_bring_back() {
      return taken_off.length > 0;
    },
  };
}
