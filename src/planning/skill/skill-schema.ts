// What a skill may look like in a file, and the shapes of text that units share with it.

import * as z from 'zod';
import { stages } from '#core';
import { areas, type SkillId } from './skill.ts';

/** One line: runs of white space become one space. `most` is in characters. */
export const lineSchema = (most: number) =>
  z
    .string()
    .overwrite((text) => text.replace(/\s+/g, ' ').trim())
    .min(1)
    .max(most);

/** Paragraphs: no white space at the ends of lines or of the text. `most` is in characters. */
export const proseSchema = (least: 0 | 1, most: number) =>
  z
    .string()
    .overwrite((text) =>
      text
        .split('\n')
        .map((line) => line.trimEnd())
        .join('\n')
        .trim(),
    )
    .min(least)
    .max(most);

// The brand is a promise of the type alone, so the schema stays a plain pattern that JSON Schema can say.
export const skillIdSchema = z
  .string()
  .regex(
    /^skill:[a-z0-9-]{1,80}$/,
    'Write skill: and then 1 to 80 lower-case letters, digits and hyphens.',
  ) as unknown as z.ZodType<SkillId, string>;

export const skillSchema = z
  .strictObject({
    id: skillIdSchema.meta({ description: 'skill: and a name of its own, as in skill:steady-beat' }),
    title: lineSchema(120).meta({ description: 'As a teacher would say it' }),
    area: z.enum(areas),
    stage: z.enum(stages).meta({ description: 'The stage at which it is usually met first' }),
    description: proseSchema(1, 600).meta({ description: 'What it looks or sounds like when it is there' }),
    restsOn: z
      .array(skillIdSchema)
      .max(12)
      .default([])
      .meta({ description: 'Skills that must be there first' }),
    ongoing: z
      .boolean()
      .default(false)
      .meta({ description: 'Reinforced in every lesson and given no slot of its own' }),
  })
  .meta({ id: 'skill' });

export const skillMapFileSchema = z.strictObject({
  format: z.literal('levare-skills/1'),
  skills: z.array(skillSchema).max(2000),
});
