// A take that was kept, looked at again: its figures, its sound where that is kept too, a level it shows, and another take to
// lay beside it.

import { type ReactNode, useState } from 'react';
import type { CourseView, TakeRow, TakeView } from '#contract';
import { Button } from '../components/button.tsx';
import { Dialog } from '../components/dialog.tsx';
import { SelectField } from '../components/field.tsx';
import { Loaded } from '../components/loading.tsx';
import { useFormat } from '../hooks/use-format.ts';
import { useTake, useTakes } from '../hooks/use-view.ts';
import { words } from '../words/index.ts';
import { CompareTakes } from './compare-takes.tsx';
import { NoteLevel } from './note-level.tsx';
import { TakeResult } from './take-result.tsx';
import { useTakeSound } from './use-take-sound.ts';
import '../components/form.css';
import './record-take.css';

export interface KeptTakeProps {
  readonly id: string;
  /** The course on which a level may be noted. */
  readonly course: CourseView;
  readonly onClose: () => void;
}

export function KeptTake({ id, course, onClose }: KeptTakeProps) {
  const take = useTake(id);
  const format = useFormat();
  const [pair, setPair] = useState<readonly [string, string] | null>(null);
  if (pair !== null) return <CompareTakes ids={pair} onClose={() => setPair(null)} />;
  const title = take.data
    ? words.takes.row(take.data.title, format.day(take.data.date, 'day'))
    : words.takes.loading;
  return (
    <Dialog title={title} open onClose={onClose} width="wide">
      <Loaded view={take}>
        {(view) => (
          <div className="record-take">
            <Kept take={view}>
              <LayBeside take={view} onPair={setPair} />
              <NoteLevel take={view} course={course} />
            </Kept>
          </div>
        )}
      </Loaded>
    </Dialog>
  );
}

function Kept({ take, children }: { readonly take: TakeView; readonly children: ReactNode }) {
  const sound = useTakeSound(take);
  return (
    <TakeResult take={take} checks={take.checks} sound={sound}>
      {children}
    </TakeResult>
  );
}

interface LayBesideProps {
  readonly take: TakeView;
  /** The earlier and the later of the two. */
  readonly onPair: (ids: readonly [string, string]) => void;
}

function LayBeside({ take, onPair }: LayBesideProps) {
  const format = useFormat();
  // Newest first.
  const all = useTakes(take.student).data?.takes ?? [];
  const others = all.filter(({ id }) => id !== take.id);
  const [chosen, setChosen] = useState<string | null>(null);
  const other = others.find(({ id }) => id === chosen) ?? likeliest(take, all);
  if (other === null) return null;
  const placeOf = (id: string) => all.findIndex((one) => one.id === id);
  return (
    <div className="lay-beside">
      <SelectField<string>
        label={words.takes.besideWhich}
        value={other.id}
        onValue={setChosen}
        options={others.map(({ id, title, date }) => ({
          value: id,
          label: words.takes.row(title, format.day(date, 'day')),
        }))}
      />
      <Button
        onPress={() =>
          onPair(placeOf(other.id) > placeOf(take.id) ? [other.id, take.id] : [take.id, other.id])
        }
      >
        {words.takes.compare}
      </Button>
    </div>
  );
}

/** The take one would lay beside this: the one before it of the same skill or work, else any before it, else any. */
function likeliest(take: TakeView, newestFirst: readonly TakeRow[]): TakeRow | null {
  const others = newestFirst.filter(({ id }) => id !== take.id);
  const earlier = newestFirst.slice(newestFirst.findIndex(({ id }) => id === take.id) + 1);
  const skills = new Set(take.proves.map(({ skill }) => skill));
  const isAlike = ({ proves, title }: TakeRow) =>
    title === take.title || proves.some(({ skill }) => skills.has(skill));
  return earlier.find(isAlike) ?? others.find(isAlike) ?? earlier[0] ?? others[0] ?? null;
}
