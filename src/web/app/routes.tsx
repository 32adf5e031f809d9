// Which screen stands at which address. Each screen is loaded when first needed, or in a quiet moment before.

import { type ComponentType, lazy, Suspense } from 'react';
import { Route, Switch } from 'wouter';
import { Button } from '../components/button.tsx';
import { ButtonLink } from '../components/button-link.tsx';
import { Empty } from '../components/empty.tsx';
import { Loaded } from '../components/loading.tsx';
import { Page } from '../components/page.tsx';
import { SaveState } from '../components/save-state.tsx';
import { useStudio } from '../hooks/use-view.ts';
import { words } from '../words/index.ts';
import { loadAgain } from './load-again.ts';
import { Stumble } from './stumble.tsx';

const loads: (() => Promise<unknown>)[] = [];

function screen<Name extends string>(name: Name, load: () => Promise<Record<Name, ComponentType>>) {
  loads.push(load);
  return lazy(async () => {
    try {
      return { default: (await load())[name] };
    } catch {
      // The server is away, or is a newer one: the page loaded again says the one and has the other.
      if (loadAgain()) return { default: Nothing };
      throw new Error(`The screen ${name} could not be loaded.`);
    }
  });
}

const Nothing = () => null;

/** Loads all screens, so that each opens though the server goes away in the middle of a lesson. */
export async function loadScreens(): Promise<void> {
  await Promise.allSettled(loads.map((load) => load()));
}

const Day = screen('DayScreen', () => import('../screens/day/day-screen.tsx'));
const Lesson = screen('LessonScreen', () => import('../screens/lesson/lesson-screen.tsx'));
const Close = screen('CloseScreen', () => import('../screens/lesson/close-screen.tsx'));
const Students = screen('StudentsScreen', () => import('../screens/students/students-screen.tsx'));
const Import = screen('ImportScreen', () => import('../screens/students/import-screen.tsx'));
const FirstLessons = screen(
  'FirstLessonsScreen',
  () => import('../screens/students/first-lessons-screen.tsx'),
);
const Student = screen('StudentScreen', () => import('../screens/student/student-screen.tsx'));
const Erase = screen('EraseScreen', () => import('../screens/erase/erase-screen.tsx'));
const Units = screen('UnitsScreen', () => import('../screens/units/units-screen.tsx'));
const Unit = screen('UnitScreen', () => import('../screens/units/unit-screen.tsx'));
const Skills = screen('SkillsScreen', () => import('../screens/units/skills-screen.tsx'));
const Materials = screen('MaterialsScreen', () => import('../screens/materials/materials-screen.tsx'));
const Backing = screen('BackingScreen', () => import('../screens/backing/backing-screen.tsx'));
const Practice = screen('PracticeScreen', () => import('../screens/practice/practice-screen.tsx'));
const PracticeDay = screen('PracticeDayScreen', () => import('../screens/practice/practice-screen.tsx'));
const PracticeWeek = screen('PracticeWeekScreen', () => import('../screens/practice/practice-screen.tsx'));
const Term = screen('TermScreen', () => import('../screens/term/term-screen.tsx'));
const Settings = screen('SettingsScreen', () => import('../screens/settings/settings-screen.tsx'));
const Changes = screen('ChangesScreen', () => import('../screens/changes/changes-screen.tsx'));
const Start = screen('StartScreen', () => import('../screens/welcome/start-screen.tsx'));
const Welcome = screen('WelcomeScreen', () => import('../screens/welcome/welcome-screen.tsx'));

function NothingHere() {
  return (
    <Page title={words.frame.notFound.title}>
      <Empty
        sentence={words.frame.notFound.text}
        action={<ButtonLink to="/">{words.frame.notFound.action}</ButtonLink>}
      />
    </Page>
  );
}

function Screens() {
  return (
    <Switch>
      <Route path="/" component={Day} />
      <Route path="/day/:date" component={Day} />
      <Route path="/lesson/:id/close" component={Close} />
      <Route path="/lesson/:id" component={Lesson} />
      <Route path="/start" component={Start} />
      <Route path="/students" component={Students} />
      <Route path="/students/import" component={Import} />
      <Route path="/students/first" component={FirstLessons} />
      <Route path="/student/:id" component={Student} />
      <Route path="/student/:id/erase" component={Erase} />
      <Route path="/units" component={Units} />
      <Route path="/unit/:id" component={Unit} />
      <Route path="/skills" component={Skills} />
      <Route path="/materials" component={Materials} />
      <Route path="/band" component={Backing} />
      <Route path="/practice/lesson/:id" component={Practice} />
      <Route path="/practice/day/:date" component={PracticeDay} />
      <Route path="/practice/week/:date" component={PracticeWeek} />
      <Route path="/term" component={Term} />
      <Route path="/settings" component={Settings} />
      <Route path="/changes" component={Changes} />
      <Route component={NothingHere} />
    </Switch>
  );
}

/** All of Levare: the welcome until there is a studio, then the screens. */
export function Routes() {
  const studio = useStudio();
  if (studio.error?.kind === 'NotSignedIn' && !studio.data) {
    return (
      <Page title={words.frame.notSignedIn.title} bare>
        <div className="alone">
          <h1>{words.frame.notSignedIn.title}</h1>
          <p className="lead">{words.frame.notSignedIn.text}</p>
        </div>
      </Page>
    );
  }
  if (studio.error?.offline && !studio.data) {
    return (
      <main className="alone">
        <h1>{words.frame.away.title}</h1>
        <p className="lead">{words.frame.away.text}</p>
        <SaveState />
        <Button onPress={() => void studio.refetch()}>{words.frame.tryAgain}</Button>
      </main>
    );
  }
  return (
    <Stumble>
      <Suspense fallback={null}>
        {studio.data ? (
          studio.data.founded ? (
            <Screens />
          ) : (
            <Welcome />
          )
        ) : (
          <main className="alone">
            <Loaded view={studio}>{() => null}</Loaded>
          </main>
        )}
      </Suspense>
    </Stumble>
  );
}
