// What rests on what around one skill, drawn. The same is said in words beside it.

import { type KeyboardEvent, useEffect, useMemo, useRef, useState } from 'react';
import type { Skill, SkillId } from '#planning';
import { sentenceCase } from '../../app/sentence-case.ts';
import { words } from '../../words/index.ts';
import { type Direction, drawSkills, type SkillNode, walk } from './draw-skills.ts';

const says = words.units.skills;
const width = 136;
const height = 74;
const gapX = 18;
const gapY = 6;
const lead = 16;

const directions: Readonly<Record<string, Direction>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
};

export interface SkillDrawingProps {
  readonly skills: readonly Skill[];
  readonly chosen: Skill;
  readonly onChoose: (skill: SkillId) => void;
}

export function SkillDrawing({ skills, chosen, onChoose }: SkillDrawingProps) {
  const drawing = useMemo(() => drawSkills(skills, chosen.id), [skills, chosen.id]);
  const [at, setAt] = useState<SkillId>(chosen.id);
  const svg = useRef<SVGSVGElement>(null);
  /** Set when the keyboard chose, so that it finds the chosen skill in its new place. */
  const walking = useRef(false);
  useEffect(() => {
    setAt(chosen.id);
    // On a narrow page the drawing is wider than its place: begin in its middle, at the chosen skill.
    const place = svg.current?.parentElement;
    const node = svg.current?.querySelector(`[data-skill="${chosen.id}"]`);
    if (!place || !node) return;
    if (walking.current && node instanceof SVGElement) node.focus({ preventScroll: true });
    walking.current = false;
    const { left, width: wide } = node.getBoundingClientRect();
    place.scrollLeft += left + wide / 2 - place.getBoundingClientRect().left - place.clientWidth / 2;
  }, [chosen.id]);

  const columns = [...new Set(drawing.nodes.map((node) => node.column))].sort((a, b) => a - b);
  const first = columns[0] ?? 0;
  const tall = Math.max(1, drawing.rows);
  const placeOf = (node: SkillNode) => {
    const count = drawing.nodes.filter((one) => one.column === node.column).length;
    const top = ((tall - count) * (height + gapY)) / 2;
    return { x: (node.column - first) * (width + gapX), y: top + node.row * (height + gapY) };
  };
  const full = {
    width: columns.length * (width + gapX) - gapX,
    height: tall * (height + gapY) - gapY,
  };
  const places = new Map(drawing.nodes.map((node) => [node.id, placeOf(node)]));
  const titleOf = (id: SkillId) => skills.find((skill) => skill.id === id)?.title ?? '';

  function onKeyDown(event: KeyboardEvent, id: SkillId) {
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      walking.current = true;
      onChoose(id);
      return;
    }
    const direction = directions[event.key];
    if (!direction) return;
    event.preventDefault();
    const next = walk(drawing, id, direction);
    if (!next) return;
    setAt(next);
    svg.current?.querySelector<SVGGElement>(`[data-skill="${next}"]`)?.focus();
  }

  return (
    <figure className="skill-drawing">
      <div className="skill-drawing-place">
        {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be an SVG */}
        <svg
          ref={svg}
          viewBox={`-2 -2 ${full.width + 4} ${full.height + 4}`}
          width={full.width + 4}
          height={full.height + 4}
          role="group"
          aria-label={says.drawing(chosen.title)}
        >
          {drawing.links.map((link) => {
            const [from, to] = [places.get(link.from), places.get(link.to)];
            if (!from || !to) return null;
            const [x1, y1, x2, y2] = [from.x + width, from.y + height, to.x, to.y + height];
            const middle = (x1 + x2) / 2;
            return (
              <path
                key={`${link.from} ${link.to}`}
                className={
                  link.from === chosen.id || link.to === chosen.id ? 'skill-link-near' : 'skill-link'
                }
                d={`M${x1} ${y1}C${middle} ${y1} ${middle} ${y2} ${x2} ${y2}`}
              />
            );
          })}
          {drawing.nodes.map((node) => {
            const place = places.get(node.id) ?? { x: 0, y: 0 };
            const isChosen = node.id === chosen.id;
            return (
              // biome-ignore lint/a11y/useSemanticElements: HTML buttons cannot stand inside an SVG
              <g
                key={node.id}
                role="button"
                tabIndex={node.id === at ? 0 : -1}
                aria-label={node.lines.join(' ')}
                aria-current={isChosen ? 'true' : undefined}
                data-skill={node.id}
                className={`skill-node${isChosen ? ' skill-node-chosen' : ''}`}
                transform={`translate(${place.x} ${place.y})`}
                onClick={() => onChoose(node.id)}
                onFocus={() => setAt(node.id)}
                onKeyDown={(event) => onKeyDown(event, node.id)}
              >
                <title>{sentenceCase(titleOf(node.id))}</title>
                <rect width={width} height={height} />
                <line x1="0" x2={width} y1={height} y2={height} />
                <text y={height - 10 - (node.lines.length - 1) * lead}>
                  {node.lines.map((line, n) => (
                    <tspan key={line} x="4" dy={n === 0 ? 0 : lead}>
                      {`${line} `}
                    </tspan>
                  ))}
                </text>
              </g>
            );
          })}
        </svg>
      </div>
      <figcaption className="faint">
        {says.drawingHelp} {drawing.leftOut > 0 && says.more(drawing.leftOut)}
      </figcaption>
    </figure>
  );
}
