import '@fontsource-variable/instrument-sans/wght.css';
import '@fontsource/instrument-serif/400.css';
import '@fontsource/instrument-serif/400-italic.css';
import './style/tokens.css';
import './style/base.css';
import './style/touch.css';
import './style/forced-colors.css';
import './components/list.css';
import { QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { I18nProvider } from 'react-aria-components';
import { createRoot } from 'react-dom/client';
import { present } from '#core';
import { startKeepingFocus } from './app/keep-focus.ts';
import { startLeadingToFaults } from './app/lead-to-fault.ts';
import { startLive } from './app/live.ts';
import { queryClient } from './app/query-client.ts';
import { loadScreens, Routes } from './app/routes.tsx';
import { tellOutboxReplies } from './app/send.ts';
import { startOutbox } from './app/the-outbox.ts';
import { readTheme } from './app/theme.ts';
import { useLocale } from './hooks/use-format.ts';

document.documentElement.setAttribute('data-theme', readTheme());

function App() {
  const locale = useLocale();
  return (
    <I18nProvider locale={locale}>
      <Routes />
    </I18nProvider>
  );
}

createRoot(present(document.getElementById('root'), 'the root element')).render(
  <StrictMode>
    <QueryClientProvider client={queryClient}>
      <App />
    </QueryClientProvider>
  </StrictMode>,
);

tellOutboxReplies();
startOutbox();
startLive();
startLeadingToFaults();
startKeepingFocus();
// After the first screen and what it asks for.
window.setTimeout(() => void loadScreens(), 2_000);
// Absent where the page is not served safely; then a dead server shows the browser's own page, as ever.
if (import.meta.env.PROD) void navigator.serviceWorker?.register('/service-worker.js').catch(() => undefined);
