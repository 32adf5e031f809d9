import { type FormEvent, useState } from 'react';
import type { Command, CourseUnitView, CourseView } from '#contract';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { SelectField, TextField } from '../../components/field.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { words } from '../../words/index.ts';
import { positionChoice, positionOptions, positionToNumber } from './strand-order.ts';
import { dayOrNull } from './what-if-commands.ts';

const say = words.student.place;

interface Props {
  readonly course: CourseView;
  readonly unit: CourseUnitView;
  readonly onClose: () => void;
}

/** Where a unit stands on the course: strand, order, days; or off it. */
export function UnitPlace({ course, unit, onClose }: Props) {
  const send = useCommand();
  const [strand, setStrand] = useState<string>(unit.strand);
  const [place, setPlace] = useState(positionChoice(course.units, unit));
  const [notBefore, setNotBefore] = useState<string>(unit.notBefore ?? '');
  const [notAfter, setNotAfter] = useState<string>(unit.notAfter ?? '');
  const sendAndClose = async (command: Command) => {
    if (await send(command)) onClose();
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const target = course.strands.find((one) => one.id === strand);
    if (!target) return;
    const moved = strand !== unit.strand || place !== positionChoice(course.units, unit);
    void sendAndClose({
      type: 'courseUnit.change',
      seen: course.revision,
      courseUnit: unit.id,
      ...(moved
        ? { strand: target.id, position: positionToNumber(course.units, target.id, place, unit.id) ?? 999 }
        : {}),
      notBefore: dayOrNull(notBefore),
      notAfter: dayOrNull(notAfter),
    });
  };
  return (
    <Dialog title={say.title(unit.title)} open onClose={onClose}>
      <form className="form" onSubmit={submit}>
        <div className="form-row">
          <SelectField
            label={say.strand}
            value={strand}
            onValue={(value) => {
              setStrand(value);
              setPlace('last');
            }}
            options={course.strands.map((one) => ({ value: one.id as string, label: one.name }))}
          />
          <SelectField
            label={say.position}
            value={place}
            onValue={setPlace}
            options={positionOptions(course.units, strand, unit.id)}
          />
        </div>
        <div className="form-row">
          <TextField label={say.notBefore} type="date" value={notBefore} onValue={setNotBefore} />
          <TextField
            label={say.notAfter}
            type="date"
            value={notAfter}
            onValue={setNotAfter}
            min={notBefore}
          />
        </div>
        <p className="form-end">
          <Button kind="primary" type="submit">
            {say.save}
          </Button>
          <Button
            kind="plain"
            onPress={() =>
              void sendAndClose({ type: 'courseUnit.remove', seen: course.revision, courseUnit: unit.id })
            }
          >
            {say.remove}
          </Button>
        </p>
      </form>
    </Dialog>
  );
}
