/** What a screen gets: the parts of the app below it, and what it draws from. Types alone; nothing of it runs. */

import type { Saved } from '../../alone/saved.js';
import type { Core } from '../../core/client.js';
import type { Device } from '../../log/device.js';
import type { Draft, EventLog } from '../../log/log.js';
import type { Store } from '../../log/store.js';
import type { Update } from '../../phone/update.js';
import type { Photos } from '../../photos/photos.js';
import type { Syncing } from '../../sync/sync.js';
import type { Drafts } from './drafts.js';
import type { LastViews } from './last-view.js';
import type { ActOptions, StandingRefusal } from './recorder.js';

/** Everything below the screens. */
export interface Services {
  core: Core;
  log: EventLog;
  sync: Syncing;
  /** Where there is no server: what is in no file yet. */
  saved: Saved | null;
  photos: Photos;
  device: Device;
  update: Update;
  store: Store;
  lastViews: LastViews;
  drafts: Drafts;
}

/** What `draw` gets; `Data` is what the screen's `load` returned. */
export interface Context<Data = any> {
  services: Services;
  /** Of the address. */
  params: Record<string, string>;
  data: Data;
  /** Plain data that survives a reload; the same object until forgotten. */
  form: Record<string, any>;
  refusal: StandingRefusal | null;
  busy: boolean;
  /** Record facts that belong together; true when they are on record, false when a rule stood against them. */
  act(drafts: Draft[], options?: ActOptions): Promise<boolean>;
  /** After a change of `form`: keep it and draw again. */
  redraw(): void;
  /** Write `form` down now; await it before a camera opens. */
  keep(): Promise<void>;
  /** Empty the form and drop its draft. */
  forget(): void;
  reload(): Promise<void>;
  go(hash: string, options?: { replace?: boolean }): void;
}
