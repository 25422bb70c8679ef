// Sorts and filters the marks on the class page. Without it the page is whole, in the order of the members' names.

const tools = /** @type {HTMLElement} */ (document.getElementById("tools"));
const name = /** @type {HTMLInputElement} */ (document.getElementById("name"));
const what = /** @type {HTMLSelectElement} */ (document.getElementById("what"));
const shown = /** @type {HTMLElement} */ (document.getElementById("shown"));
const tables = /** @type {HTMLTableElement[]} */ ([...document.querySelectorAll("table.grid")]);
const letters = new Intl.Collator(undefined, { numeric: true, sensitivity: "base" });

/** @param {HTMLTableElement} table */
const rowsOf = (table) => [...table.tBodies[0].rows];
const first = rowsOf(tables[0]);
const all = first.length;

/** What a cell is sorted by: its number; a sign, for which there is no number, comes before 0, an empty cell before all.
 * @param {HTMLTableRowElement} row
 * @param {number} column */
function valueOf(row, column) {
  const text = row.cells[column].innerText.trim();
  const number = parseFloat(text);
  return Number.isNaN(number) ? (text ? -1 : -2) : number;
}

/** Every table in the order of the first one's rows, with the same rows hidden.
 * @param {HTMLTableRowElement[]} rows */
function arrange(rows) {
  const places = rows.map((row) => Number(row.dataset.place));
  for (const table of tables) {
    const byPlace = new Map(rowsOf(table).map((row) => [Number(row.dataset.place), row]));
    table.tBodies[0].append(...places.flatMap((place) => byPlace.get(place) ?? []));
  }
}

/** Sort by a column; once more turns the order round. Numbers begin with the largest, names with A.
 * @param {HTMLTableCellElement} head */
function sort(head) {
  const before = head.getAttribute("aria-sort");
  for (const other of tables[0].querySelectorAll("[aria-sort]")) other.removeAttribute("aria-sort");
  const column = Number(head.dataset.column);
  const rises = before ? before === "descending" : column === 0;
  head.setAttribute("aria-sort", rises ? "ascending" : "descending");
  const turn = rises ? 1 : -1;
  arrange(
    rowsOf(tables[0]).sort((one, other) => {
      const names = letters.compare(one.cells[0].innerText, other.cells[0].innerText);
      return turn * (column === 0 ? names : valueOf(one, column) - valueOf(other, column)) || names;
    }),
  );
  shown.textContent = `Sorted by ${head.innerText.trim()}, ${rises ? "rising" : "falling"}.`;
}

function filter() {
  const part = name.value.trim().toLocaleLowerCase();
  const places = new Set();
  for (const row of first) {
    const fits = row.cells[0].innerText.toLocaleLowerCase().includes(part);
    if (fits && (!what.value || (row.dataset.has ?? "").split("|").includes(what.value))) places.add(row.dataset.place);
  }
  for (const table of tables) for (const row of rowsOf(table)) row.hidden = !places.has(row.dataset.place);
  shown.textContent = `${places.size} of ${all} members shown.`;
}

for (const head of /** @type {NodeListOf<HTMLTableCellElement>} */ (tables[0].querySelectorAll("th[data-column]"))) {
  const button = document.createElement("button");
  button.type = "button";
  button.append(...head.childNodes);
  button.addEventListener("click", () => sort(head));
  head.append(button);
}
name.addEventListener("input", filter);
what.addEventListener("change", filter);
tools.hidden = false;

export {};
