// Words of the page frame and of what every screen shares.

export const frame = {
  app: 'Levare',
  skip: 'Skip to the page',
  navigation: 'Main',
  day: 'Day',
  students: 'Students',
  units: 'Units',
  materials: 'Materials',
  term: 'Term',
  settings: 'Settings',
  changes: 'Changes',
  saved: 'Saved',
  saving: 'Saving',
  waiting: (pending: number) =>
    pending === 1 ? 'Kept here: 1 change waits to be sent' : `Kept here: ${pending} changes wait to be sent`,
  notKept: 'This browser keeps nothing; stay on this page until it says Saved.',
  undo: 'Undo',
  undoLast: 'Undo the last change',
  andMore: (label: string, count: number) =>
    count === 1 ? `${label}, and 1 change with it` : `${label}, and ${count} changes with it`,
  nothingToUndo: 'There is nothing to undo.',
  lookAtNewest: 'Look at the newest',
  notTaken: (text: string) => `What was written: ${text}`,
  dismiss: 'Put away',
  messages: 'Messages',
  theme: 'Theme',
  themes: { paper: 'Paper', hall: 'Hall', system: 'As the system' },
  offline:
    'Levare is not running at this address just now. What you wrote is kept here; start it again and go on.',
  away: {
    title: 'Levare is not running just now',
    text: 'What you wrote is kept in this browser. Start Levare again at this address, and the page goes on by itself.',
  },
  broken: 'Something went wrong in Levare. Nothing was changed; try again.',
  loading: 'One moment',
  tryAgain: 'Try again',
  notSignedIn: {
    title: 'Open Levare by its own link',
    text: 'This browser is not known here yet. Where Levare was started it prints a link; open that link once in this browser. For another link, press Enter there.',
  },
  notFound: {
    title: 'Nothing at this address',
    text: 'The page may have been moved or removed.',
    action: 'Go to today',
  },
  fell: {
    title: 'This page stumbled',
    text: 'What you wrote is kept. Load the page again.',
    action: 'Load again',
  },
  choose: 'choose',
  mendFirst: (count: number) =>
    count === 1 ? 'One thing above needs mending first.' : `${count} things above need mending first.`,
  cancel: 'Cancel',
  close: 'Close',
  save: 'Save',
  add: 'Add',
  remove: 'Remove',
  change: 'Change',
  optional: 'optional',
  required: 'needed',
} as const;
