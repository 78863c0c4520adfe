/** A Wavefront OBJ of a box with one corner at the origin, its faces wound to the outside. */
export function boxObj(x: number, y: number, z: number): string {
  const corners = Array.from({ length: 8 }, (_, i) => [i & 1 ? x : 0, i & 2 ? y : 0, i & 4 ? z : 0]);
  const faces = ['1 3 4 2', '5 6 8 7', '1 2 6 5', '3 7 8 4', '1 5 7 3', '2 4 8 6'];
  const lines = [...corners.map((c) => `v ${c.join(' ')}`), ...faces.map((f) => `f ${f}`)];
  return `o box\n${lines.join('\n')}\n`;
}

/** An OBJ of a level tray of n by n cells: as much work as is wanted. */
export function trayObj(n: number): string {
  const at = (i: number, j: number) => j * (n + 1) + i + 1;
  const lines = [];
  for (let j = 0; j <= n; j++) for (let i = 0; i <= n; i++) lines.push(`v ${i * 2} ${j * 2} ${(i + j) % 2}`);
  for (let j = 0; j < n; j++)
    for (let i = 0; i < n; i++)
      lines.push(`f ${at(i, j)} ${at(i + 1, j)} ${at(i + 1, j + 1)} ${at(i, j + 1)}`);
  return `o tray\n${lines.join('\n')}\n`;
}

/** An OBJ of a level dish with walls and floor 5 thick, open at the top; holds all that is poured in. */
export function dishObj(x: number, y: number, z: number): string {
  const ring = (inset: number, height: number) => [
    [inset, inset, height],
    [x - inset, inset, height],
    [x - inset, y - inset, height],
    [inset, y - inset, height],
  ];
  const corners = [...ring(0, 0), ...ring(0, z), ...ring(5, z), ...ring(5, 5)];
  const band = (low: number) =>
    [0, 1, 2, 3].map(
      (k) => `${low + k + 1} ${low + ((k + 1) % 4) + 1} ${low + ((k + 1) % 4) + 5} ${low + k + 5}`,
    );
  const faces = ['4 3 2 1', ...band(0), ...band(4), ...band(8), '13 14 15 16'];
  return `o dish\n${[...corners.map((c) => `v ${c.join(' ')}`), ...faces.map((f) => `f ${f}`)].join('\n')}\n`;
}
