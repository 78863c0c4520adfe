/** One colour a material, as a builder would keep them in a drawing office. */
export const colors = {
  stainless: '#c6ced4',
  stainlessDark: '#a3adb5',
  bright: '#dfe4e8',
  plasticWhite: '#eef0ea',
  plasticBlue: '#3f78b4',
  rubber: '#2b2f34',
  glass: '#bfdcdf',
  clear: '#d5e6ea',
  motor: '#7d8993',
  cable: '#4a5057',
  red: '#c4262e',
  yellow: '#f0c419',
  screen: '#22384a',
  filter: '#f4f4ee',
  green: '#3b8f5a',
} as const;
