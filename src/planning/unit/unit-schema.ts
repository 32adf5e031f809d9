// What a unit may look like in a file. Anything that a file may leave out has its usual value here.

import * as z from 'zod';
import { stages } from '#core';
import { areas } from '../skill/skill.ts';
import { lineSchema, proseSchema, skillIdSchema, skillSchema } from '../skill/skill-schema.ts';
import { listenForSchema } from './listen-for-schema.ts';
import { type UnitFile, type UnitId, waysHome } from './unit.ts';

const keySchema = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'Write lower-case words joined by hyphens, as in two-bar-answers.')
  .max(60)
  .meta({ description: 'Lower-case words joined by hyphens, unique within the unit' });

// The brand is a promise of the type alone, so the schema stays a plain pattern that JSON Schema can say.
const unitIdSchema = z
  .string()
  .regex(
    /^unit:[a-z0-9-]{1,80}$/,
    'Write unit: and then 1 to 80 lower-case letters, digits and hyphens.',
  ) as unknown as z.ZodType<UnitId, string>;

const wholeMinutes = z.int().min(1).max(120);

const minutesSchema = z
  .strictObject({
    shortest: wholeMinutes.meta({ description: 'The least time in which the activity does some good' }),
    usual: wholeMinutes.meta({ description: 'The usual time in all, over one or more lessons' }),
    longest: wholeMinutes.meta({ description: 'The most time it is worth' }),
  })
  .superRefine((minutes, context) => {
    if (minutes.shortest > minutes.usual)
      context.addIssue({
        code: 'custom',
        path: ['shortest'],
        message: `is ${minutes.shortest}, more than usual (${minutes.usual})`,
        params: { mend: 'Keep shortest ≤ usual ≤ longest.' },
      });
    if (minutes.usual > minutes.longest)
      context.addIssue({
        code: 'custom',
        path: ['usual'],
        message: `is ${minutes.usual}, more than longest (${minutes.longest})`,
        params: { mend: 'Keep shortest ≤ usual ≤ longest.' },
      });
  })
  .meta({ id: 'minutes', description: 'Whole minutes, shortest ≤ usual ≤ longest' });

const years = z.int().min(3).max(99);

const agesSchema = z
  .strictObject({ from: years, to: years })
  .superRefine((ages, context) => {
    if (ages.from > ages.to)
      context.addIssue({
        code: 'custom',
        path: ['from'],
        message: `is ${ages.from}, more than to (${ages.to})`,
        params: { mend: 'Put the younger age first.' },
      });
  })
  .meta({ id: 'ages', description: 'Years of age, both ends included' });

const stagesSchema = z.array(z.enum(stages)).min(1).max(4);
const bringSchema = z.array(lineSchema(160)).max(20);

const materialSchema = z
  .strictObject({
    key: keySchema,
    title: lineSchema(120),
    spec: z.unknown().optional().meta({ description: 'A material spec, from which the sheet is made' }),
    seed: z
      .exactOptional(z.int().min(0).max(2_147_483_647))
      .meta({ description: 'Fixes what chance chooses; absent, each student gets their own' }),
    takeHome: z.exactOptional(z.enum(waysHome)).meta({
      description:
        'whenDone: on the practice sheet from the lesson in which the activity is finished; never: for the lesson alone; absent: whenever the activity was worked on',
    }),
  })
  .meta({ id: 'material' });

const materialsSchema = z.array(materialSchema).max(20);

const variantSchema = z
  .strictObject({
    stages: z.exactOptional(stagesSchema),
    ages: z.exactOptional(agesSchema),
    title: z.exactOptional(lineSchema(120)),
    howTo: z.exactOptional(proseSchema(1, 6000)),
    minutes: z.exactOptional(minutesSchema),
    materials: z.exactOptional(materialsSchema),
    bring: z.exactOptional(bringSchema),
  })
  .meta({
    id: 'variant',
    description: 'What changes for these stages and ages; the first that fits is used',
  });

const activitySchema = z
  .strictObject({
    key: keySchema,
    title: lineSchema(120),
    howTo: proseSchema(0, 6000)
      .default('')
      .meta({ description: 'How to teach it, in Markdown paragraphs: what to say, show, play and ask' }),
    minutes: minutesSchema,
    develops: z.array(skillIdSchema).max(12).default([]).meta({ description: 'Main skill first' }),
    character: z
      .enum(['new', 'hard', 'easy', 'musical'])
      .default('new')
      .meta({ description: 'new or hard: best while fresh; easy or musical: best near the end of a lesson' }),
    variants: z.array(variantSchema).max(12).default([]),
    materials: materialsSchema.default([]),
    bring: bringSchema.default([]),
  })
  .meta({ id: 'activity' });

const checkSchema = z
  .strictObject({
    key: keySchema,
    skill: skillIdSchema,
    level: z
      .union([z.literal(1), z.literal(2), z.literal(3), z.literal(4)])
      .default(2)
      .meta({ description: '1 introduced, 2 with help, 3 alone, 4 transfers' }),
    lookFor: proseSchema(1, 1000).meta({ description: 'What to look or listen for' }),
    listenFor: z.exactOptional(listenForSchema),
  })
  .meta({ id: 'check' });

const unitSchema = z
  .strictObject({
    format: z.literal('levare-unit/1'),
    id: unitIdSchema.meta({ description: 'unit: and a name of its own, as in unit:pulse-comes-first' }),
    version: z.int().min(1).max(1_000_000).default(1),
    title: lineSchema(120),
    area: z.enum(areas),
    goal: lineSchema(300).meta({ description: 'Completes: will be able to …' }),
    about: proseSchema(0, 4000)
      .default('')
      .meta({ description: 'For the teacher: why, and what to watch for' }),
    stages: stagesSchema,
    ages: agesSchema,
    families: z
      .array(z.string().regex(/^[a-z][a-z-]{1,39}$/, 'Write a lower-case word, as in woodwind.'))
      .max(20)
      .default([])
      .meta({ description: 'Instrument families it suits; empty for all' }),
    skills: z.array(skillIdSchema).max(60).default([]),
    activities: z.array(activitySchema).max(60).meta({ description: 'In teaching order' }),
    extensions: z.array(activitySchema).max(60).default([]),
    checks: z.array(checkSchema).max(60).default([]),
    next: z.array(unitIdSchema).max(30).default([]).meta({ description: 'Units that may follow' }),
  })
  .superRefine((unit, context) => {
    const count = unit.activities.length + unit.extensions.length;
    if (count > 60)
      context.addIssue({
        code: 'custom',
        path: ['activities'],
        message: `and extensions are ${count} together, more than 60`,
        params: { mend: 'Split the unit in two.' },
      });
  })
  .meta({ id: 'unit' });

export const unitFileSchema = z.strictObject({
  unit: unitSchema,
  skills: z.array(skillSchema).max(500).default([]).meta({
    description: 'The skills the unit names and those they rest on; may be left out beside a skill map',
  }),
});

// The schema and the type must not drift apart: this line does not compile if they do.
const _agreement: (file: z.output<typeof unitFileSchema>) => UnitFile = (file) => file;
void _agreement;
