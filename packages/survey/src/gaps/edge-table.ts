/** One whole number per edge, by its two vertices: open addressing, because a Map of long keys took most of the time. */
export interface EdgeTable {
  /** Lower vertex, higher vertex, value; -1 for an empty slot. */
  slots: Int32Array;
  count: number;
}

export const unknown = -2;

export function newEdgeTable(expected: number): EdgeTable {
  const size = 2 ** Math.ceil(Math.log2(Math.max(64, 2 * expected)));
  return { slots: new Int32Array(size * 3).fill(-1), count: 0 };
}

/** The value of an edge between vertices low < high; `unknown` when it has none. */
export function edgeValue({ slots }: EdgeTable, low: number, high: number): number {
  const at = slotOf(slots, low, high);
  return slots[at] < 0 ? unknown : slots[at + 2];
}

export function setEdgeValue(table: EdgeTable, low: number, high: number, value: number): void {
  if (table.count * 6 > table.slots.length) grow(table);
  const at = slotOf(table.slots, low, high);
  if (table.slots[at] < 0) table.count++;
  table.slots[at] = low;
  table.slots[at + 1] = high;
  table.slots[at + 2] = value;
}

function slotOf(slots: Int32Array, low: number, high: number): number {
  const mask = slots.length / 3 - 1;
  let h = Math.imul(low, 0x9e3779b1) ^ Math.imul(high, 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  let i = (h ^ (h >>> 13)) & mask;
  while (slots[3 * i] >= 0 && (slots[3 * i] !== low || slots[3 * i + 1] !== high)) i = (i + 1) & mask;
  return 3 * i;
}

function grow(table: EdgeTable): void {
  const old = table.slots;
  table.slots = new Int32Array(old.length * 2).fill(-1);
  for (let i = 0; i < old.length; i += 3) {
    if (old[i] < 0) continue;
    const at = slotOf(table.slots, old[i], old[i + 1]);
    table.slots[at] = old[i];
    table.slots[at + 1] = old[i + 1];
    table.slots[at + 2] = old[i + 2];
  }
}
