// A unit to print and teach from.

import { describeCheck } from '#listening';
import type { Skill, SkillId } from '../skill/skill.ts';
import type {
  Activity,
  ActivityVariant,
  AgeRange,
  Check,
  MaterialReference,
  Minutes,
  TakeHome,
  UnitDocument,
  UnitId,
} from './unit.ts';

const levelNames = { 1: 'introduced', 2: 'with help', 3: 'alone', 4: 'transfers' } as const;

/** The whole unit as Markdown (CommonMark); skills and following units by title where known, else by id. */
export function unitToMarkdown(
  unit: UnitDocument,
  skillsById: ReadonlyMap<SkillId, Skill>,
  unitTitlesById: ReadonlyMap<UnitId, string> = new Map(),
): string {
  const skillName = (id: SkillId) => escapeLine(skillsById.get(id)?.title ?? id);
  const total = unit.activities.reduce((sum, activity) => sum + activity.minutes.usual, 0);
  const developed = new Set(
    [...unit.activities, ...unit.extensions].flatMap((activity) => activity.develops),
  );
  const neededFirst = new Set(
    [...developed].flatMap((id) => skillsById.get(id)?.restsOn ?? []).filter((id) => !developed.has(id)),
  );
  const blocks: string[] = [
    `# ${escapeLine(unit.title)}`,
    `*The student will be able to ${escapeLine(unit.goal)}*`,
    [
      `- Area: ${unit.area}`,
      `- Suits: ${unit.stages.join(', ')}; ${formatAges(unit.ages)}; ${unit.families.length === 0 ? 'any instrument or voice' : unit.families.join(', ')}`,
      `- Usual time: ${total} minutes in ${unit.activities.length} activities`,
    ].join('\n'),
    unit.about,
    '## Skills',
    bullets(unit.skills.map(skillName)),
    ...(neededFirst.size > 0 ? ['Needed first:', bullets([...neededFirst].map(skillName))] : []),
    '## Activities',
    ...unit.activities.flatMap((activity, i) => writeActivity(activity, `${i + 1}. `, skillName)),
    ...(unit.extensions.length > 0 ? ['## Extensions', 'For whoever is ready early.'] : []),
    ...unit.extensions.flatMap((activity) => writeActivity(activity, '', skillName)),
    ...(unit.checks.length > 0 ? ['## How one knows that it is learnt'] : []),
    bullets(
      unit.checks.map(
        (check) =>
          `**${skillName(check.skill)}** (${levelNames[check.level]}): ${check.lookFor.replaceAll('\n', '\n  ')}${writeListenFor(check)}`,
      ),
    ),
    ...(unit.next.length > 0
      ? ['## What may follow', bullets(unit.next.map((id) => escapeLine(unitTitlesById.get(id) ?? id)))]
      : []),
  ];
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

function writeActivity(
  activity: Activity,
  number: string,
  skillName: (id: SkillId) => string,
): readonly string[] {
  const facts = [
    ...(activity.develops.length > 0 ? [`Develops: ${activity.develops.map(skillName).join('; ')}`] : []),
    ...(activity.materials.length > 0 ? [`Materials: ${titlesOf(activity.materials)}`] : []),
    ...(activity.bring.length > 0 ? [`Bring: ${activity.bring.map(escapeLine).join('; ')}`] : []),
  ];
  return [
    `### ${number}${escapeLine(activity.title)} (${formatMinutes(activity.minutes)})`,
    bullets(facts),
    activity.howTo,
    ...activity.variants.flatMap(writeVariant),
  ];
}

function writeVariant(variant: ActivityVariant): readonly string[] {
  const facts = [
    ...(variant.title === undefined ? [] : [escapeLine(variant.title)]),
    ...(variant.minutes === undefined ? [] : [formatMinutes(variant.minutes)]),
    ...(variant.materials === undefined || variant.materials.length === 0
      ? []
      : [`materials: ${titlesOf(variant.materials)}`]),
    ...(variant.bring === undefined || variant.bring.length === 0
      ? []
      : [`bring ${variant.bring.map(escapeLine).join('; ')}`]),
  ];
  const whom = [
    ...(variant.stages === undefined ? [] : [variant.stages.join(', ')]),
    ...(variant.ages === undefined ? [] : [formatAges(variant.ages)]),
  ];
  const heading = `**For ${whom.length === 0 ? 'everyone' : whom.join(', ')}**${facts.length === 0 ? '' : `: ${facts.join('; ')}`}`;
  const block = variant.howTo === undefined ? heading : `${heading}\n\n${variant.howTo}`;
  return [
    block
      .split('\n')
      .map((line) => (line === '' ? '>' : `> ${line}`))
      .join('\n'),
  ];
}

const titlesOf = (materials: readonly MaterialReference[]): string =>
  materials
    .map(({ title, takeHome }) => `${escapeLine(title)}${takeHome ? ` (${sayTakeHome[takeHome]})` : ''}`)
    .join('; ');

const sayTakeHome: Readonly<Record<TakeHome, string>> = {
  whenDone: 'taken home when the activity is done',
  never: 'for the lesson alone',
};

function writeListenFor({ listenFor = [] }: Check): string {
  return listenFor.length === 0
    ? ''
    : `\n  A take shows it by: ${listenFor.map((spec) => describeCheck(spec)).join('; ')}.`;
}

function formatMinutes({ shortest, usual, longest }: Minutes): string {
  return `${usual} min, ${shortest} to ${longest}`;
}

function formatAges({ from, to }: AgeRange): string {
  if (from === to) return `age ${from}`;
  return to === 99 ? `ages ${from} and up` : `ages ${from} to ${to}`;
}

function bullets(lines: readonly string[]): string {
  return lines.map((line) => `- ${line}`).join('\n');
}

/** A line of plain text that Markdown must not take for markup. */
function escapeLine(text: string): string {
  return text.replace(/[\\`*_[\]<>#|]/g, '\\$&');
}
