import { describe, expect, it } from 'vitest';
import type { Skill } from '#planning';
import { skillId } from './draft.fixture.ts';
import { findNearSkills } from './find-near-skills.ts';

const skill = (title: string, at: number): Skill => ({
  id: skillId(`skill-${at}`),
  title,
  area: 'technique',
  stage: 'beginner',
  description: 'Even quavers on open strings, in a description.',
  restsOn: [],
  ongoing: false,
});
const skills = [
  'plays running quavers evenly',
  'plays two-octave scales in even quavers',
  'plays at ease',
  'plays a drone',
  'changes strings without a sound between',
  'Löst die Hand',
].map(skill);
const near = (text: string) => findNearSkills(skills, text).map((one) => one.title);

describe('findNearSkills', () => {
  it('finds what is worded a little otherwise, the nearest first', () => {
    expect(near('even quavers on open strings').slice(0, 2)).toEqual([
      'plays running quavers evenly',
      'plays two-octave scales in even quavers',
    ]);
  });

  it('knows a word by its beginning, and without its accents', () => {
    expect(near('playing a running quaver')[0]).toBe('plays running quavers evenly');
    expect(near('scale')).toEqual(['plays two-octave scales in even quavers']);
    expect(near('Lost hands')).toEqual(['Löst die Hand']);
  });

  it('gives a rare word more weight than a common one', () => {
    expect(near('plays drones')).toEqual(['plays a drone']);
  });

  it('finds nothing by chance', () => {
    expect(near('tremolo')).toEqual([]);
    expect(near('on a')).toEqual([]);
    expect(near('')).toEqual([]);
    expect(findNearSkills([], 'even quavers')).toEqual([]);
  });

  it('offers five at most', () => {
    expect(
      findNearSkills(
        Array.from({ length: 9 }, (_, at) => skill(`sings phrase ${at}`, at)).concat(skills),
        'sings high',
      ),
    ).toHaveLength(5);
  });
});
