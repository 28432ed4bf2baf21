/** What a step module gets: the context of its screen, with the job's view and the step that it draws. */

import type { JobView, Step } from '../../../core/views.js';
import type { Context } from '../../frame/context.js';

export interface StepContext<Present extends Step = Step> extends Context<JobView> {
  view: JobView;
  step: Present;
  /** The job's id. */
  job: string;
}
