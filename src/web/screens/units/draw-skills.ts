// Where skills stand in the drawing around a chosen one: what it rests on to the left, what rests on it to the right,
// two steps each way.

import { present } from '#core';
import type { Skill, SkillId } from '#planning';
import { sentenceCase } from '../../app/sentence-case.ts';

export interface SkillNode {
  readonly id: SkillId;
  /** −2 and −1 are left of the chosen skill, 1 and 2 right of it. */
  readonly column: number;
  readonly row: number;
  readonly lines: readonly string[];
}
export interface SkillLink {
  /** The skill that must be there first. */
  readonly from: SkillId;
  readonly to: SkillId;
}
export interface SkillDrawing {
  readonly nodes: readonly SkillNode[];
  readonly links: readonly SkillLink[];
  /** Skills left out of a column that would be too tall. */
  readonly leftOut: number;
  /** Of the tallest column. */
  readonly rows: number;
}

/** More than this in a column is a list, not a drawing. */
export const mostRows = 8;
const lineLength = 19;
const mostLines = 4;

/** Lays the drawing out; only the chosen skill when nothing is joined to it. */
export function drawSkills(skills: readonly Skill[], chosen: SkillId): SkillDrawing {
  const byId = new Map(skills.map((skill) => [skill.id, skill]));
  if (!byId.has(chosen)) return { nodes: [], links: [], leftOut: 0, rows: 0 };
  const restsOn = (id: SkillId) => (byId.get(id)?.restsOn ?? []).filter((one) => byId.has(one));
  const supports = (id: SkillId) => skills.filter((one) => one.restsOn.includes(id)).map((one) => one.id);

  const placed = new Map<SkillId, { column: number; row: number }>([[chosen, { column: 0, row: 0 }]]);
  let leftOut = 0;
  for (const [side, step] of [
    [-1, restsOn],
    [1, supports],
  ] as const) {
    let edge: readonly SkillId[] = [chosen];
    for (const distance of [1, 2]) {
      const found = [...new Set(edge.flatMap(step))].filter((id) => !placed.has(id));
      const shown = found.slice(0, mostRows);
      leftOut += found.length - shown.length;
      for (const [row, id] of shown.entries()) placed.set(id, { column: side * distance, row });
      edge = shown;
    }
  }
  const nodes = [...placed].map(
    ([id, place]): SkillNode => ({
      id,
      ...place,
      lines: breakLines(sentenceCase(present(byId.get(id), 'a placed skill').title)),
    }),
  );
  const columnOf = (id: SkillId) => placed.get(id)?.column;
  const links = nodes.flatMap(({ id, column }) =>
    restsOn(id)
      // A link within a column, or over more than one, would cross the words.
      .filter((from) => columnOf(from) === column - 1)
      .map((from): SkillLink => ({ from, to: id })),
  );
  const heights = [-2, -1, 0, 1, 2].map((column) => nodes.filter((node) => node.column === column).length);
  return { nodes, links, leftOut, rows: Math.max(...heights) };
}

/** A title in lines of at most 19 characters, at most four; a longer word stands alone. */
export function breakLines(title: string): readonly string[] {
  const lines: string[] = [];
  for (const word of title.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && `${last} ${word}`.length <= lineLength)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  if (lines.length <= mostLines) return lines;
  const cut = present(lines[mostLines - 1], 'the last line').slice(0, lineLength - 1);
  return [...lines.slice(0, mostLines - 1), `${cut}…`];
}

export type Direction = 'left' | 'right' | 'up' | 'down';

/** The node an arrow key goes to: along a link first, else the nearest of the next column; null at the edge. */
export function walk(drawing: SkillDrawing, from: SkillId, direction: Direction): SkillId | null {
  const here = drawing.nodes.find((node) => node.id === from);
  if (!here) return null;
  if (direction === 'up' || direction === 'down') {
    const row = here.row + (direction === 'up' ? -1 : 1);
    return drawing.nodes.find((node) => node.column === here.column && node.row === row)?.id ?? null;
  }
  const linked =
    direction === 'left'
      ? drawing.links.find((link) => link.to === from)?.from
      : drawing.links.find((link) => link.from === from)?.to;
  if (linked) return linked;
  const column = here.column + (direction === 'left' ? -1 : 1);
  return (
    drawing.nodes
      .filter((node) => node.column === column)
      .sort((a, b) => Math.abs(a.row - here.row) - Math.abs(b.row - here.row))[0]?.id ?? null
  );
}
