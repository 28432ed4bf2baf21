// @ts-check
/**
 * To what the labels of this installation belong: a server by its host, an app without one by the folder
 * it lies in, for many may share a host of files. `server/core/codes/labels.py` says what the symbols then hold.
 */

import { HAS_SERVER, ROOT } from '../place.js';

/** The address that stands in each label. */
export const LABEL_BASE = HAS_SERVER ? location.origin : ROOT.href;

/** What a scanned label has to name to be one of ours. */
export const LABEL_HOST = HAS_SERVER ? location.host : `${ROOT.host}${ROOT.pathname}`.replace(/\/$/, '');
