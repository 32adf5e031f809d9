// The first run: what Levare is, whose studio this will be, or a look at a demo studio first.

import { type FormEvent, useState } from 'react';
import { useLocation } from 'wouter';
import { guessLocale, guessTimeZone } from '../../app/regions.ts';
import { Button } from '../../components/button.tsx';
import { TextField } from '../../components/field.tsx';
import { ImportStudio } from '../../components/import-studio.tsx';
import { Page } from '../../components/page.tsx';
import { LocaleField, TimeZoneField } from '../../components/region-fields.tsx';
import { Tick } from '../../components/tick.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { words } from '../../words/index.ts';
import { Upbeat } from './upbeat.tsx';
import { useDemo } from './use-demo.ts';
import '../../components/form.css';
import './welcome.css';

const says = words.welcome;

function FoundForm() {
  const send = useCommand();
  const [, navigate] = useLocation();
  const [name, setName] = useState('');
  const [teacher, setTeacher] = useState('');
  const [timeZone, setTimeZone] = useState(guessTimeZone);
  const [locale, setLocale] = useState(guessLocale);
  const [starterUnits, setStarterUnits] = useState(true);
  const [tried, setTried] = useState(false);
  const [busy, setBusy] = useState(false);

  async function found(event: FormEvent) {
    event.preventDefault();
    setTried(true);
    if (name.trim() === '' || busy) return;
    setBusy(true);
    // Where to go is set first: the screens appear as soon as the studio is there.
    navigate('/start', { replace: true });
    await send({
      type: 'studio.found',
      name: name.trim(),
      teacher: teacher.trim(),
      timeZone,
      locale,
      starterUnits,
    });
    setBusy(false);
  }

  return (
    <form className="welcome-form" onSubmit={found} noValidate>
      <h2>{says.found.title}</h2>
      <div className="form-row form-top">
        <TextField
          label={says.found.name}
          placeholder={says.found.namePlaceholder}
          value={name}
          onValue={setName}
          fault={tried && name.trim() === '' ? says.found.nameMissing : null}
          required
        />
        <TextField label={says.found.teacher} value={teacher} onValue={setTeacher} autoComplete="name" />
      </div>
      <div className="form-row form-top">
        <TimeZoneField value={timeZone} onValue={setTimeZone} help={says.found.timeZoneHelp} />
        <LocaleField value={locale} onValue={setLocale} />
      </div>
      <div>
        <Tick ticked={starterUnits} onTick={setStarterUnits}>
          {says.found.starterUnits}
        </Tick>
        <p className="faint">{says.found.starterUnitsHelp}</p>
      </div>
      <div>
        <Button kind="primary" large type="submit" pending={busy}>
          {says.found.action}
        </Button>
      </div>
    </form>
  );
}

function LookRound() {
  const [, navigate] = useLocation();
  const { share, start, stop } = useDemo(() => navigate('/', { replace: true }));
  return (
    <div className="welcome-others">
      <section>
        <h2>{says.demo.title}</h2>
        <p className="soft">{says.demo.text}</p>
        {share === null ? (
          <Button onPress={() => void start()}>{says.demo.action}</Button>
        ) : (
          <div>
            <progress className="welcome-progress" aria-label={says.demo.busy} value={share} />
            <p className="faint" role="status">
              {says.demo.busy}
            </p>
            <Button kind="plain" onPress={stop}>
              {says.demo.stop}
            </Button>
          </div>
        )}
      </section>
      <section>
        <h2>{says.bring.title}</h2>
        <p className="soft">{says.bring.text}</p>
        <ImportStudio onDone={() => navigate('/', { replace: true })} />
      </section>
    </div>
  );
}

export function WelcomeScreen() {
  return (
    <Page title={says.title} bare>
      <div className="welcome">
        <header className="welcome-head">
          <h1 className="welcome-name">{words.frame.app}</h1>
          <Upbeat />
          <div className="welcome-what">
            {says.what.map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
            <p className="faint">{says.yours}</p>
          </div>
        </header>
        <div className="welcome-choice">
          <FoundForm />
          <LookRound />
        </div>
      </div>
    </Page>
  );
}
