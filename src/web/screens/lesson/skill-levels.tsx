// The skills of a segment: what to look and listen for, and one touch to say what was heard.

import type { LessonSegmentView, LessonSkillView } from '#contract';
import type { Level } from '#planning';
import { sentenceCase } from '../../app/sentence-case.ts';
import { LevelPicker } from '../../components/level-picker.tsx';
import { words } from '../../words/index.ts';

export interface SkillLevelsProps {
  readonly segment: LessonSegmentView;
  readonly onLevel: (skill: LessonSkillView, level: Level) => void;
}

const levelName = (level: Level) => words.levels[level].name.toLowerCase();

export function SkillLevels({ segment, onLevel }: SkillLevelsProps) {
  if (segment.skills.length === 0) return null;
  return (
    <section aria-label={words.lesson.checks}>
      <ul className="skills">
        {segment.skills.map((skill) => (
          <li key={skill.skill} className="skill" data-skill={skill.skill}>
            <div className="skill-head">
              <p className="skill-title">{sentenceCase(skill.title)}</p>
              <p className="skill-standing">
                {words.lesson.wanted(levelName(skill.wanted))}
                {' · '}
                {skill.here
                  ? words.lesson.recorded
                  : skill.level === null
                    ? words.lesson.never
                    : words.lesson.before(levelName(skill.level))}
              </p>
            </div>
            {skill.lookFor.length > 0 && (
              <ul className="skill-look" aria-label={words.lesson.look}>
                {skill.lookFor.map((sentence) => (
                  <li key={sentence}>{sentence}</li>
                ))}
              </ul>
            )}
            <LevelPicker
              label={words.lesson.levelFor(skill.title)}
              level={skill.here?.level ?? null}
              wanted={skill.wanted}
              onLevel={(level) => onLevel(skill, level)}
            />
          </li>
        ))}
      </ul>
    </section>
  );
}
