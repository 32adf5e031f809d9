// Where the holes and keys of each woodwind lie in its diagram, seen from the front with the mouthpiece up; keys of the
// thumb stand left. Simplified: main holes in a column, keys beside the hand that presses them. From memory of common
// charts. name, x, y, and for keys what is written on them when pressed.

export type HoleRow = readonly [name: string, x: number, y: number];
export type KeyRow = readonly [name: string, x: number, y: number, label: string];

const sixHoles: readonly HoleRow[] = [
  ['1', 32, 16],
  ['2', 32, 30],
  ['3', 32, 44],
  ['4', 32, 66],
  ['5', 32, 80],
  ['6', 32, 94],
];

export const recorderHoles: readonly HoleRow[] = [
  ['T', 16, 10],
  ['1', 32, 16],
  ['2', 32, 30],
  ['3', 32, 44],
  ['4', 32, 64],
  ['5', 32, 78],
  ['6', 32, 92],
  ['7', 32, 106],
];
export const recorderKeys: readonly KeyRow[] = [];

export const fluteHoles: readonly HoleRow[] = [['T', 12, 16], ...sixHoles];
export const fluteKeys: readonly KeyRow[] = [
  ['Bb', 12, 29, 'Bb'],
  ['G#', 52, 49, 'G#'],
  ['trD', 12, 73, 'D'],
  ['trEb', 12, 87, 'Eb'],
  ['Eb', 16, 110, 'Eb'],
  ['C#', 34, 110, 'C#'],
  ['C', 52, 110, 'C'],
];

export const oboeHoles: readonly HoleRow[] = sixHoles;
export const oboeKeys: readonly KeyRow[] = [
  ['oct1', 12, 12, '1'],
  ['oct2', 12, 25, '2'],
  ['G#', 52, 42, 'G#'],
  ['B', 52, 53, 'B'],
  ['Bb', 52, 64, 'Bb'],
  ['leftF', 52, 75, 'F'],
  ['F', 12, 87, 'F'],
  ['C', 16, 110, 'C'],
  ['C#', 34, 110, 'C#'],
  ['Eb', 52, 110, 'Eb'],
];

export const clarinetHoles: readonly HoleRow[] = [['T', 12, 24], ...sixHoles];
export const clarinetKeys: readonly KeyRow[] = [
  ['R', 12, 10, 'R'],
  ['throatA', 52, 8, 'A'],
  ['throatAb', 52, 20, 'Ab'],
  ['C#/G#', 52, 49, 'C#'],
  ['sideEb', 12, 62, 'Eb'],
  ['sideF#', 12, 74, 'F#'],
  ['sliver', 12, 87, 'B'],
  ['F#/C#', 22, 110, 'F#'],
  ['Ab/Eb', 42, 110, 'Ab'],
  ['E/B', 22, 121, 'E'],
  ['F/C', 42, 121, 'F'],
];
export const bassClarinetKeys: readonly KeyRow[] = [...clarinetKeys, ['lowEb', 60, 121, 'Eb']];

export const saxophoneHoles: readonly HoleRow[] = sixHoles;
export const saxophoneKeys: readonly KeyRow[] = [
  ['oct', 12, 12, '8'],
  ['bis', 14, 25, 'bis'],
  ['palmD', 52, 6, 'D'],
  ['palmEb', 52, 17, 'Eb'],
  ['palmF', 52, 28, 'F'],
  ['G#', 52, 44, 'G#'],
  ['C#', 52, 55, 'C#'],
  ['B', 52, 66, 'B'],
  ['Bb', 52, 77, 'Bb'],
  ['sideE', 12, 54, 'E'],
  ['sideC', 12, 65, 'C'],
  ['sideBb', 12, 76, 'Bb'],
  ['forkF#', 12, 87, 'F#'],
  ['highF#', 12, 98, 'F#'],
  ['Eb', 24, 110, 'Eb'],
  ['C', 42, 110, 'C'],
];
export const baritoneSaxKeys: readonly KeyRow[] = [...saxophoneKeys, ['lowA', 12, 38, 'A']];

export const bassoonHoles: readonly HoleRow[] = sixHoles;
export const bassoonKeys: readonly KeyRow[] = [
  ['flickC', 12, 6, 'C'],
  ['flickA', 12, 16, 'A'],
  ['W', 12, 26, 'W'],
  ['C#', 12, 36, 'C#'],
  ['lowD', 12, 46, 'D'],
  ['lowC', 12, 56, 'C'],
  ['lowB', 12, 66, 'B'],
  ['lowBb', 12, 76, 'Bb'],
  ['Eb', 52, 42, 'Eb'],
  ['Db', 52, 53, 'Db'],
  ['E', 12, 92, 'E'],
  ['Bb', 12, 102, 'Bb'],
  ['F#', 12, 112, 'F#'],
  ['F', 44, 112, 'F'],
  ['Ab', 60, 112, 'Ab'],
];
