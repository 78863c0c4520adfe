/** The site in words: what a survey took to stand around the machine. */
import type { Site } from '@coveline/survey';

const counted = (n: number, one: string, many: string) => (n === 0 ? [] : [`${n} ${n === 1 ? one : many}`]);

/** One line, such as "Site, proposed: floor at 0 mm, 3 access sides, 1 door". */
export function siteLine(site: Site): string {
  const words = [
    ...(site.floor_mm === undefined ? [] : [`floor at ${Math.round(site.floor_mm)} mm`]),
    ...counted(site.walls.length, 'wall', 'walls'),
    ...counted(site.access.length, 'access side', 'access sides'),
    ...counted(site.doors.length, 'door', 'doors'),
    ...counted(site.mouths.length, 'open container', 'open containers'),
    ...counted(site.filters.length, 'filter face', 'filter faces'),
    ...counted(site.nozzles.length, 'nozzle', 'nozzles'),
    ...counted(site.drains.length, 'drain', 'drains'),
    ...counted(site.mains.length, 'line of tubes', 'lines of tubes'),
  ];
  return `Site, proposed from geometry and names: ${words.join(', ') || 'nothing'}`;
}
