// One unit: read, written anew (`/unit/new`), changed (`?change`), or a student's copy of it (`?copy=`).

import { lazy } from 'react';
import { useParams, useSearchParams } from 'wouter';
import { isId } from '#core';
import { Loaded } from '../../components/loading.tsx';
import { Page } from '../../components/page.tsx';
import { useUnit } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { UnitPage } from './unit-page.tsx';

// Reading is far more frequent than writing, so the editor comes when it is asked for.
const ChangeUnit = lazy(async () => ({ default: (await import('./write-unit.tsx')).ChangeUnit }));
const NewUnit = lazy(async () => ({ default: (await import('./write-unit.tsx')).NewUnit }));
const AdaptCopy = lazy(async () => ({ default: (await import('./adapt-copy.tsx')).AdaptCopy }));

export function UnitScreen() {
  const { id = '' } = useParams<{ id: string }>();
  const [search] = useSearchParams();
  const copy = search.get('copy') ?? '';
  const like = search.get('like') ?? '';
  const version = /^[1-9]\d{0,6}$/.test(search.get('version') ?? '') ? Number(search.get('version')) : null;
  if (isId('course-unit', copy)) return <AdaptCopy key={copy} id={copy} />;
  if (id === 'new') return isId('unit', like) ? <NewLike like={like} /> : <NewUnit key="new" like={null} />;
  if (search.has('change')) return <Change key={id} id={id} />;
  return <UnitPage key={id} id={id} version={version} />;
}

function NewLike({ like }: { readonly like: string }) {
  const view = useUnit(like);
  if (view.data) return <NewUnit key={like} like={view.data.document} />;
  return (
    <Page title={words.units.editor.newTitle}>
      <Loaded view={view}>{() => null}</Loaded>
    </Page>
  );
}

function Change({ id }: { readonly id: string }) {
  const view = useUnit(id);
  if (view.data) return <ChangeUnit unit={view.data.document} newest={view.data.document.version} />;
  return (
    <Page title={words.units.unit.title}>
      <Loaded view={view}>{() => null}</Loaded>
    </Page>
  );
}
