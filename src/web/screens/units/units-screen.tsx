// Units: the library as a list by area.

import { Link, useLocation, useSearchParams } from 'wouter';
import type { UnitRow } from '#contract';
import { type Area, areas, type Stage, stages } from '#planning';
import { Button } from '../../components/button.tsx';
import { ButtonLink } from '../../components/button-link.tsx';
import { Empty } from '../../components/empty.tsx';
import { SelectField, TextField } from '../../components/field.tsx';
import { Loaded } from '../../components/loading.tsx';
import { Page } from '../../components/page.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { useUnits } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { areaNames } from '../../words/student.ts';
import { filterUnits, groupByArea, readFilter, type UnitFilter } from './filter-units.ts';
import { stageSpan } from './stage-span.ts';
import { TakeIn } from './take-in.tsx';
import './units.css';

const says = words.units;

export function UnitsScreen() {
  const view = useUnits();
  const [, navigate] = useLocation();
  const [search, setSearch] = useSearchParams();
  const taking = search.has('take');
  const empty = view.data?.units.length === 0;
  return (
    <Page
      title={says.title}
      lead={says.lead}
      actions={
        <>
          <ButtonLink to="/skills" kind="plain">
            {says.toSkills}
          </ButtonLink>
          {!empty && (
            <>
              <Button onPress={() => setSearch({ take: '' })}>{says.takeIn}</Button>
              <ButtonLink to="/unit/new" kind="primary">
                {says.create}
              </ButtonLink>
            </>
          )}
        </>
      }
    >
      <Loaded view={view}>
        {({ units }) =>
          units.length === 0 ? (
            <Empty
              sentence={says.none}
              action={
                <>
                  <ButtonLink to="/unit/new" kind="primary">
                    {says.create}
                  </ButtonLink>
                  <Button onPress={() => setSearch({ take: '' })}>{says.takeIn}</Button>
                </>
              }
            />
          ) : (
            <Library units={units} />
          )
        }
      </Loaded>
      <TakeIn
        open={taking}
        onClose={(unit) => {
          if (unit) navigate(`/unit/${unit}`);
          else setSearch({}, { replace: true });
        }}
      />
    </Page>
  );
}

function Library({ units }: { readonly units: readonly UnitRow[] }) {
  const [search, setSearch] = useSearchParams();
  const filter = readFilter(search);
  const set = (change: Partial<UnitFilter>) =>
    setSearch(
      Object.entries({ ...filter, ...change }).filter(([, value]) => value !== ''),
      { replace: true },
    );
  const filtering = Object.values(filter).some((value) => value !== '');
  const found = filterUnits(units, filter);
  const current = found.filter((unit) => !unit.retired);
  const retired = found.filter((unit) => unit.retired);
  return (
    <>
      <search className="units-find no-print">
        <TextField
          label={says.find}
          type="search"
          placeholder={says.findPlaceholder}
          value={filter.find}
          onValue={(find) => set({ find })}
        />
        <SelectField<Area | ''>
          label={says.area}
          value={filter.area}
          onValue={(area) => set({ area })}
          options={[
            { value: '', label: says.anyArea },
            ...areas.map((area) => ({ value: area, label: areaNames[area] })),
          ]}
        />
        <SelectField<Stage | ''>
          label={says.stage}
          value={filter.stage}
          onValue={(stage) => set({ stage })}
          options={[
            { value: '', label: says.anyStage },
            ...stages.map((stage) => ({ value: stage, label: words.stageNames[stage] })),
          ]}
        />
        <TextField
          label={says.age}
          type="number"
          min={3}
          max={99}
          placeholder={says.anyAge}
          value={filter.age}
          onValue={(age) => set({ age })}
        />
        <p className="faint" role="status">
          {says.count(found.length)}
        </p>
      </search>
      {found.length === 0 && (
        <p className="soft">
          {says.noneFound}{' '}
          {filtering && (
            <Button kind="plain" onPress={() => setSearch({}, { replace: true })}>
              {says.clear}
            </Button>
          )}
        </p>
      )}
      {groupByArea(current).map((group) => (
        <section key={group.area} className="units-area" aria-label={areaNames[group.area]}>
          <h2>{areaNames[group.area]}</h2>
          <UnitList units={group.units} />
        </section>
      ))}
      {retired.length > 0 && (
        <section className="units-area units-retired" aria-label={says.retired}>
          <h2>{says.retired}</h2>
          <div>
            <p className="soft">{says.retiredLead}</p>
            <UnitList units={retired} />
          </div>
        </section>
      )}
    </>
  );
}

function UnitList({ units }: { readonly units: readonly UnitRow[] }) {
  const format = useFormat();
  return (
    <ul className="units-list">
      {units.map((unit) => (
        <li key={unit.id}>
          <div className="units-what">
            <h3>
              <Link href={`/unit/${unit.id}`}>{unit.title}</Link>
            </h3>
            <p className="soft">… {says.goal(unit.goal)}</p>
          </div>
          <p className="units-facts">
            <span>
              {stageSpan(unit.stages)}, {says.agesSuit(unit.ages)}
            </span>
            <span>{says.work(format.minutes(unit.usualMinutes), unit.activities)}</span>
            {unit.usedBy > 0 && <span>{says.usedBy(unit.usedBy)}</span>}
          </p>
        </li>
      ))}
    </ul>
  );
}
