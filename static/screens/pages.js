// @ts-check
/**
 * The screens by name (the names that router.js gives).
 */

import { faultPage, nowherePage } from './fault.js';
import { jobPage } from './job.js';
import { jobsPage } from './jobs.js';

/**
 * @typedef {object} Page
 * @property {(services: import('./app.js').Services, params: Record<string, string>) => Promise<any> | any} load
 * @property {(ctx: any) => import('./frame.js').Parts} draw
 * @property {(params: Record<string, string>, data: any) => string} [formKey]  where what is entered here is kept
 */

/** @type {Record<string, Page>} */
export const pages = {
  jobs: jobsPage,
  job: jobPage,
  nowhere: nowherePage,
  fault: faultPage,
};
