// Giving a unit: which, on which strand, where in its order; what it would do to the course is shown before it is given.

import { useState } from 'react';
import type { CourseView, Step, UnitRow } from '#contract';
import { sendTogether } from '../../app/send.ts';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { SelectField, TextField } from '../../components/field.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { useUnits } from '../../hooks/use-view.ts';
import { newId } from '../../new-id.ts';
import { words } from '../../words/index.ts';
import { areaNames } from '../../words/student.ts';
import { Imagining } from './imagining.tsx';
import { strandFor } from './strand-for.ts';
import { positionOptions, positionToNumber } from './strand-order.ts';
import { useWhatIf } from './use-what-if.ts';

const say = words.student.give;

interface Props {
  readonly course: CourseView;
  /** Chosen already, where one comes from its page; else empty. */
  readonly given: string;
  readonly onClose: () => void;
}

export function GiveUnit({ course, given, onClose }: Props) {
  const format = useFormat();
  const units = useUnits().data?.units ?? [];
  const [find, setFind] = useState('');
  const [chosenId, setChosenId] = useState<string>(given);
  const [picked, setPicked] = useState<string | null>(null);
  const [after, setAfter] = useState('last');
  const [courseUnit] = useState(() => newId('course-unit'));
  const { imagined, asking, ask, forget } = useWhatIf(course);
  const chosen = units.find((unit) => unit.id === chosenId) ?? null;
  const strand = picked ?? strandFor(course, chosen)?.id ?? '';
  const onCourse = new Set(course.units.map((unit) => unit.unit));
  // What was asked for stands first; what the course has already is seldom wanted twice and stands last.
  const standOf = (unit: UnitRow) => (unit.id === given ? 0 : onCourse.has(unit.id) ? 2 : 1);
  const found = findUnits(units, find).toSorted((a, b) => standOf(a) - standOf(b));
  const onStrand = course.strands.find((one) => one.id === strand);

  const choose = (unit: UnitRow) => {
    forget();
    setChosenId(unit.id);
    setPicked(null);
  };
  const command = (): Step | null => {
    if (!chosen || !onStrand) return null;
    const position = positionToNumber(course.units, onStrand.id, after);
    return {
      type: 'courseUnit.give',
      seen: course.revision,
      course: course.id,
      courseUnit,
      unit: chosen.id,
      strand: onStrand.id,
      ...(position === null ? {} : { position }),
    };
  };

  return (
    <Dialog title={say.title} open onClose={onClose} width="wide">
      <div className="form">
        <TextField
          label={say.find}
          type="search"
          value={find}
          onValue={setFind}
          help={say.findHelp}
          autoFocus
        />
        {found.length === 0 ? (
          <p className="soft">{say.none}</p>
        ) : (
          <ul className="give-list" aria-label={say.unit}>
            {found.map((unit) => (
              <li key={unit.id}>
                <button type="button" aria-pressed={chosen?.id === unit.id} onClick={() => choose(unit)}>
                  <span className="give-title">{unit.title}</span>
                  <span className="faint">
                    {areaNames[unit.area]} · {say.usual(format.minutes(unit.usualMinutes))}
                    {onCourse.has(unit.id) ? ` · ${say.already}` : ''}
                  </span>
                  <span className="soft">{words.student.units.goal(unit.goal)}</span>
                </button>
              </li>
            ))}
          </ul>
        )}
        <div className="form-row">
          <SelectField
            label={say.strand}
            value={strand}
            onValue={(value) => {
              forget();
              setPicked(value);
              setAfter('last');
            }}
            options={course.strands.map((one) => ({ value: one.id as string, label: one.name }))}
          />
          <SelectField
            label={say.position}
            value={after}
            onValue={(value) => {
              forget();
              setAfter(value);
            }}
            options={positionOptions(course.units, strand)}
          />
        </div>
        {imagined ? (
          <Imagining
            view={imagined.view}
            keep={say.give}
            onKeep={async () => {
              if (await sendTogether(imagined.commands, say.title)) onClose();
            }}
            onLeave={onClose}
          />
        ) : (
          <p className="form-end">
            <Button
              kind="primary"
              isDisabled={command() === null}
              pending={asking}
              onPress={() => {
                const one = command();
                if (one) void ask([one]);
              }}
            >
              {say.preview}
            </Button>
            <Button kind="plain" onPress={onClose}>
              {say.leave}
            </Button>
          </p>
        )}
      </div>
    </Dialog>
  );
}

/** Units whose title, goal or area has every word looked for. */
function findUnits(units: readonly UnitRow[], find: string): readonly UnitRow[] {
  const wanted = find.toLocaleLowerCase().split(/\s+/).filter(Boolean);
  return units.filter((unit) => {
    const text = `${unit.title} ${unit.goal} ${areaNames[unit.area]}`.toLocaleLowerCase();
    return !unit.retired && wanted.every((word) => text.includes(word));
  });
}
