// server: the studio over HTTP on this machine.

export {
  type ConfigFault,
  defaultDataFolder,
  readConfig,
  type ServerConfig,
  studioFile,
} from './config/config.ts';
export { readLibrary } from './library/read-library.ts';
export { startSearchThread } from './search-thread/start-search-thread.ts';
export { type RunningServer, type StartFault, startServer } from './start-server.ts';
