// Settings: the studio, its place and paper, planning defaults, the look, and keeping a copy of everything.

import type { StudioView } from '#contract';
import { ButtonLink } from '../../components/button-link.tsx';
import { ImportStudio } from '../../components/import-studio.tsx';
import { Loaded } from '../../components/loading.tsx';
import { Page } from '../../components/page.tsx';
import { ThemeSwitch } from '../../components/theme-switch.tsx';
import { useStudio } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { PlanningForm } from './planning-form.tsx';
import { StudioForm } from './studio-form.tsx';
import '../../components/button.css';
import '../../components/form.css';
import './settings.css';

const says = words.settings;

function Parts({ studio }: { readonly studio: StudioView }) {
  const { students, terms, courses } = studio.counts;
  const empty = students + terms + courses === 0;
  return (
    <div className="settings">
      <section aria-labelledby="settings-studio">
        <h2 id="settings-studio">{says.studio.title}</h2>
        <StudioForm studio={studio} />
      </section>
      <section aria-labelledby="settings-planning">
        <h2 id="settings-planning">{says.planning.title}</h2>
        <div>
          <p className="soft settings-lead">{says.planning.lead}</p>
          <PlanningForm studio={studio} />
        </div>
      </section>
      <section aria-labelledby="settings-look">
        <h2 id="settings-look">{says.look.title}</h2>
        <div className="settings-slim">
          <ThemeSwitch />
          <p className="faint">{says.look.help}</p>
        </div>
      </section>
      <section aria-labelledby="settings-keep">
        <h2 id="settings-keep">{says.keep.title}</h2>
        <div className="settings-form">
          <p className="soft settings-lead">{says.keep.exportText}</p>
          <p>
            <a className="button button-quiet" href="/api/export" download>
              {says.keep.exportAction}
            </a>
          </p>
          {empty && (
            <>
              <p className="soft settings-lead">{says.keep.importText}</p>
              <div>
                <ImportStudio />
              </div>
            </>
          )}
        </div>
      </section>
      <section aria-labelledby="settings-changes">
        <h2 id="settings-changes">{says.changes.title}</h2>
        <div className="settings-form">
          <p className="soft settings-lead">{says.changes.text}</p>
          <p>
            <ButtonLink to="/changes">{says.changes.action}</ButtonLink>
          </p>
        </div>
      </section>
    </div>
  );
}

export function SettingsScreen() {
  const studio = useStudio();
  return (
    <Page title={says.title}>
      <Loaded view={studio}>{(data) => <Parts studio={data} />}</Loaded>
    </Page>
  );
}
