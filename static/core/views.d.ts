/**
 * What the core hands to the screens: the one declaration that both sides are held to.
 *
 * The type checker holds the screens to it. `tests/core/test_view_types.py` reads this file and holds every answer
 * that the core gives over its jobs to exactly these fields and kinds of values; so it keeps to interfaces, unions,
 * lists, literals and `Record`. What ends in `_words`, and `words`, `sentence`, `title`, `text`, is ready to be read.
 */

/** What each operation of the core (server/core/host.py) that a screen asks for answers. */
export interface Answers {
  job: JobView;
  jobs: JobLine[];
  job_list: JobListView;
  make_findable: boolean;
  people: string[];
  others: string;
  evidence: EvidenceView;
  beside: EntriesView;
  outside: OutsideEntry | null;
  entry: EntryView;
  righted: RightedView;
  assumptions: AssumptionsView;
  report: ReportView;
  vehicles: VehicleView[];
  vehicle: VehiclePageView;
  layouts: LayoutView[];
  sorts: SortView[];
  unit: UnitView;
  units: UnitPlaced[];
  near_labels: NearLabels;
  scan: ScanAnswer;
  code: CodeAnswer;
  code_typed: CodeTyped;
  standing: StandingView;
  maker_symbol: SymbolAnswer;
  counter: CounterAnswer;
  waiting: WaitingReturn[];
  record_weighed: RecordWeighed;
  decided: DecidedView;
  find: FoundReturn[];
  label_batches: BatchLine[];
  label_batch: BatchView;
  label_plan: LabelPlan;
  label_pages: LabelPages;
}

// --- what all views are made of

/** A fact that a tap records. */
export interface Draft {
  kind: string;
  data: Record<string, any>;
}

/** A button: its words, and the facts that a tap on it records. */
export interface Action {
  words: string;
  events: Draft[];
}

/** Records a repair: its form asks where (into `segment` of the fact) and takes pictures, of a position or "". */
export interface RepairAction extends Action {
  segments: { id: string; words: string }[];
  position: string;
}

/** Where a sensor can be: one of these, or at a position of a vehicle. */
export type Place = 'fitted' | 'out' | 'stock' | 'counter' | 'customer' | 'scrapped' | 'mixed';
export type How = 'scanned' | 'typed' | 'tapped';
/** How a reading or a position is drawn. */
export type Mark = 'clean' | 'fault' | 'untested' | 'aside' | 'empty';
export type Edge = 'rear' | 'front' | 'left' | 'right';

export interface Named {
  id: string;
  name: string;
}

export interface Option {
  id: string;
  words: string;
}

/** A sensor by its label; `shown` is empty where it has none. */
export interface UnitBrief {
  id: string;
  shown: string;
  part: string;
}

export interface UnitPlaced extends UnitBrief {
  where: string;
  /** Where it was found bad, of one that could be taken for a good one; else "". */
  bad: string;
}

/** The labels that have the few characters somebody typed, and how many there are besides. */
export interface NearLabels {
  labels: { code: string; shown: string; where: string; bad: string }[];
  more: number;
}

/** One of several places that are on record for a sensor in dispute. */
export interface Claim {
  place: Place;
  position: string | null;
  words: string;
}

/** A sensor of a job. */
export interface JobUnit extends UnitPlaced {
  name: string;
  /** The readings of its numbers that stand; a further one names them (`over`). */
  noted: string[];
  came_from: string;
  /** Whether its label was written by hand. */
  written: boolean;
  claims: Claim[];
}

/** A picture in a report. */
export interface ReportPicture extends Picture {
  faulted: boolean;
}

export interface Picture {
  at: number;
  sha256: string;
  words: string;
}

/** What is held beside a part at the counter; `alone` is the sensor itself, as it was labelled. */
export interface CounterPicture extends Picture {
  alone: boolean;
}

export interface JobPhoto {
  at: number;
  sha256: string;
  shows: 'position' | 'screen' | 'unit' | 'work';
  position: string;
  unit: string;
  /** Which sensor sat at the position when it was taken. */
  sat: string;
}

/** What it shows, and when in the work it was taken. */
export interface JobPicture extends JobPhoto {
  words: string;
  moment: string;
}

// --- a job

export type Stage = 'look' | 'test' | 'label' | 'swap' | 'prove' | 'close';

export interface JobLine {
  id: string;
  title: string;
  vehicle: string;
  plate: string;
  complaint: string;
  sort: string;
  opened_at: number;
  closed: boolean;
  /** 0 while it is open. */
  closed_at: number;
  tests: number;
  out: number;
  disputed: number;
  paused: boolean;
  handed_to: string;
  /** Null where it is closed, as the two sentences are empty then. */
  board: SmallBoard | null;
  standing_words: string;
  next_words: string;
}

export interface ListedJob extends JobLine {
  /** Also what a list is filtered by. */
  stands: 'open' | 'waiting' | 'closed';
  /** What a search found in it that its row does not say, or what only comes near. */
  found_by: string[];
}

export interface VehicleListed {
  id: string;
  name: string;
  plate: string;
  vin: string;
  /** How many there are on it. */
  jobs: number;
}

export interface JobListView {
  jobs: ListedJob[];
  /** Sensors whose label or serial number was asked for. */
  units: UnitPlaced[];
  /** Vehicles whose name, plate or VIN was asked for. */
  vehicles: VehicleListed[];
  /** Nothing has exactly what was typed: this comes close. */
  near: boolean;
  /** Whether the text has anything to search for: gaps and marks alone have not. */
  searched: boolean;
  /** Of all that were found, whatever is shown. */
  counts: { open: number; waiting: number; closed: number };
  /** How many rows there are besides. */
  more: number;
  /** How many that were closed earlier are left out, because nothing was asked for. */
  older: number;
}

export interface SmallBoard {
  kind: BoardKind;
  positions: { id: string; edge: Edge; index: number; mark: Mark; x: number; y: number }[];
}

export interface JobView {
  id: string;
  title: string;
  complaint: string;
  /** The sort of part, as PART() takes it. */
  sort: string;
  vehicle: { id: string; name: string; vin: string };
  /** What earlier jobs on the vehicle say; null on a first visit. */
  back: ReturningView | null;
  stage: Stage;
  stages: { id: Stage; word: string; state: 'done' | 'now' | 'to_come' }[];
  closed: boolean;
  comes_and_goes: boolean;
  board: BoardView;
  step: Step;
  /** What the step is to others who are at the job: ids, which their phones put into words. */
  doing: { what: string; positions: string[] };
  /** What can be done instead of the step; null once it is closed. */
  ways: WaysView | null;
  /** What is asked of who listens at the positions; null once it is closed or where there is nothing to hear. */
  listen: ListenView | null;
  paused: boolean;
  /** Who works on from here; null where it was not handed over. */
  handed: { to: string; by: string; at: number } | null;
  cautions: Caution[];
  trail: TrailView;
  /** Null before the first test. */
  reasoning: Reasoning | null;
  /** Whether the next moves and the proof are worked out; until then there are none. */
  planned: boolean;
  moves: Move[];
  may_choose: boolean;
  reopened: boolean;
  /** The last entry of each phone on it: a test or a closing says that it knew of these. */
  knows: string[];
  proof: Proof;
  out: JobUnit[];
  mixed: MixUp[];
  disputes: JobUnit[];
  close: { ready: boolean; blockers: string[] };
  photos: JobPicture[];
  units: JobUnit[];
  replaced: string[];
  history: HistoryEntry[];
}

/** One of several answers; what was typed goes into its last fact. */
export interface WayChoice extends Action {
  id: string;
  wants: '' | 'part' | 'note';
}

export interface RepairWay extends RepairAction {
  id: string;
  wants: '';
}

export interface WaysView {
  /** `part` is the number to order, as far as it is known; null while it rests already. */
  pause: { text: string; part: string; choices: WayChoice[] } | null;
  repair: { text: string; choices: RepairWay[] };
  /** `people` are those who worked on the job; the name and a note go into `event`. */
  hand: { text: string; people: string[]; event: Draft };
  close: {
    text: string;
    /** What has to be settled first: `stop` ends the move under way or says that all is pushed home, `settle` asks where each sensor goes. */
    blockers: string[];
    stop: Action | null;
    settle: { unit: string; title: string; choices: PlaceChoice[] }[];
    choices: WayChoice[];
  };
}

/** The last two are plans on which each position has its place. */
export type BoardKind = 'rear' | 'front' | 'around' | 'vehicle' | 'engine';

export interface BoardView {
  kind: BoardKind;
  positions: BoardPosition[];
}

export interface BoardPosition {
  id: string;
  name: string;
  edge: Edge;
  index: number;
  count_on_edge: number;
  /** In thousandths from the left and the top of a plan; 0 where there is none. */
  x: number;
  y: number;
  /** What is where in its plug, as somebody typed it. */
  pins: string;
  mark: Mark;
  word: string;
  unit: UnitBrief | null;
  /** The digest of its picture, empty where there is none. */
  photo: string;
  reach_minutes: number;
}

export interface Caution {
  id: string;
  icon: string;
  sentence: string;
  /** Stands for the sentence once it was read. */
  short: string;
  acknowledge: boolean;
  acknowledged: boolean;
}

export interface ListenView {
  text: string;
  cautions: Caution[];
  answers: Option[];
  /** `heard` is the answer given since the last test, empty where none was. */
  rows: { position: string; words: string; heard: string }[];
  /** With no position in it: they go into the list named as the answer. */
  event: Draft;
}

export interface TrailView {
  tests: { n: number; label: string; counted: boolean; why: string }[];
  rows: { position: string; name: string; suspect: boolean }[];
  lines: TrailLine[];
  /** Where sensors got mixed up: from the line of one to that of a part that may be it. */
  joins: { start: string; end: string }[];
  /** The same in words; "" without any. */
  mixed_words: string;
}

export interface TrailLine {
  unit: string;
  shown: string;
  suspect: boolean;
  points: TrailPoint[];
}

/** Where a sensor was in a test; `position` is null where it was in hand. */
export interface TrailPoint {
  test: number;
  position: string | null;
  mark: Mark;
}

export interface Reasoning {
  sentence: string;
  detail: string;
  aside: string[];
  carries_words: string;
  past_words: string;
  causes: { cause: string; words: string; probability_words: string }[];
  verdict: { cause: string; words: string; live: boolean }[] | null;
  /** In parts per billion, as `clear` is. */
  probability: number | null;
  clear: number;
  clear_words: string;
  confidence_words: string;
  else_words: string;
  /** How well it holds against its assumptions; empty where nothing is concluded. */
  holds_words: string;
  settled: boolean;
}

export interface Outlook {
  chance_words: string;
  result: string;
  then: string;
}

export interface Move {
  move: 'retest' | 'clean' | 'exchange' | 'unplug' | 'meter' | 'listen' | 'repair' | 'replace';
  title: string;
  reason: string;
  why_not: string;
  minutes_words: string;
  start_words: string;
  events: Draft[];
  /** For a replacement: the step that asks for the new sensor. */
  form: NewUnitStep | null;
  /** For a repair: what its form asks for. */
  repair: RepairAction | null;
  cautions: Caution[];
  /** The positions that a hand comes to. */
  touches: string[];
  /** Which goes where; `start` is empty for a sensor that no position holds. */
  arrows: { start: string; goal: string }[];
  outlook: Outlook[];
  spares: string[];
}

export interface Proof {
  settled: boolean;
  sentence: string;
  run_words: string;
  clear_words: string;
  wanted_words: string;
  clean_in_a_row: number;
  more: number | null;
}

export interface MixUp {
  at: number;
  count: number;
  sentence: string;
  scan_words: string;
  test_words: string;
  /** Who is who as far as the tests tell; "" while they tell nothing. */
  who_words: string;
}

export interface HistoryEntry {
  device: string;
  seq: number;
  at: number;
  actor: string;
  kind: string;
  /** Where it shows, "test:2", "reading:1", "repair:1", "photo:DIGEST", "position:ID", "unit:ID", "vehicle:ID"; nowhere once it was taken back. */
  about: string[];
  sentence: string;
  undone: { actor: string; reason: string } | null;
  may_undo: boolean;
  /** Who put it right, and the sentence of what it said before. */
  righted: { actor: string; said: string } | null;
  may_right: boolean;
  /** The correction of it that stands, as whoever corrects it now says. */
  over: string[];
  /** What brings it back, where it was taken back. */
  back?: Draft[];
  /** Who said it on whose phone, where that is not the actor's; and what a person should see about that. */
  who?: string;
  flags?: string[];
}

/** What was recorded of a unit outside any job, and the jobs that have to do with it. */
export interface EntriesView {
  unit: string;
  shown: string;
  jobs: { id: string; title: string }[];
  history: HistoryEntry[];
}

/** An entry that no host could show, and why. */
export interface OutsideEntry {
  device: string;
  seq: number;
  message: string;
}

/** An entry as it can be entered anew; a field "vehicle.plate" is the plate of its vehicle. */
export interface EntryView {
  kind: string;
  data: Record<string, any>;
  fields: EntryField[];
  over: string[];
}

/** An option with `sets` puts that into the data in place of its value. */
export interface EntryField {
  name: string;
  words: string;
  form: 'one' | 'many' | 'text';
  value: any;
  options: { value: any; words: string; sets?: Record<string, any> }[];
}

/** What a correction changes, or the refusal of it; `unfit` are later entries that no longer fit. */
export interface RightedView {
  refusal: { rule: string; title: string; sentence: string; do: string } | null;
  sentence: string;
  unfit: { seq: number; at: number; sentence: string }[];
  /** What is recorded with it. */
  besides: Draft[];
}

// --- the one step that comes next, by the form that it needs

export type Step =
  | TapStep
  | CautionsStep
  | LookStep
  | PhotoStep
  | TestStep
  | MovesStep
  | ChoicesStep
  | ScanStep
  | ChecklistStep
  | MeasureStep
  | FoundStep
  | NewUnitStep
  | WalkStep
  | WhereToStep
  | CloseStep
  | ContradictionStep
  | DoneStep;

/** How far a move has got; `word` says of what. */
export interface Progress {
  now: number;
  total: number;
  word?: string;
}

export interface PlainStep {
  id: string;
  title: string;
  /** Over several steps that are gone through on one screen. */
  heading: string | null;
  text: string;
  second: Action | RepairAction | null;
  /** Ways out that are always there. */
  also: Action[];
  progress: Progress | null;
}

export interface TapStep extends PlainStep {
  form: null;
  action: Action | RepairAction;
  expects: { do?: 'lock'; position?: string; positions?: string[]; unit?: string };
  choices: never[];
  /** Once the wiring checks of a position are done. */
  harness?: HarnessView | null;
}

export interface CautionsStep extends PlainStep {
  form: 'cautions';
  action: Action;
  expects: {};
  choices: never[];
}

export interface LookStep extends PlainStep {
  form: 'look';
  action: Action;
  expects: { lamps: LampLine[]; looked: boolean; heading: string; text: string; positions: Named[]; found: Option[] };
  choices: never[];
}

/** A lamp to look at; the first of its choices is as it should be. */
export interface LampLine {
  when: string;
  heading: string;
  text: string;
  choices: Option[];
}

export interface PhotoDue extends Named {
  done: boolean;
}

export interface PhotoStep extends PlainStep {
  form: 'photo';
  action: Action;
  /** `position` is the next one; `positions` all that are due. */
  expects: { position: string; shows: 'position'; positions: PhotoDue[] };
  choices: never[];
}

/** What proves that the test ran, in the words of the sort of part. */
export interface TestWords {
  question: string;
  /** Stands over the likely answers. */
  asked: string;
  yes: string;
  no: string;
  heard: string;
  not_heard: string;
}

export interface TestStep extends PlainStep {
  form: 'test';
  action: Action;
  expects: {
    number: number;
    positions: Named[];
    unplugged: string[];
    empty: string[];
    asks: TestWords;
    /** Whether a control unit of this sort stores trouble codes. */
    codes: boolean;
    /** What may have brought out a fault that comes and goes; `chosen` stands until somebody chooses. */
    provoking: { of: { id: string; words: string }[]; chosen: string } | null;
  };
  choices: TestAnswer[];
}

/** What is said of a trouble code while it is typed; `before` is what people here said of it, the latest first. */
export interface CodeTyped {
  code: string;
  failure_type: string;
  ok: boolean;
  sentence: string;
  before: { means: string; words: string }[];
}

/** A likely answer of a test, with the whole fact. */
export interface TestAnswer extends Action {
  id: 'went' | 'stayed' | 'still' | 'gone' | 'not_heard';
  mark: Mark;
}

export interface MovesStep extends PlainStep {
  form: 'moves';
  action: Action;
  expects: {};
  choices: never[];
}

export interface ChoicesStep extends PlainStep {
  form: 'choices';
  action: null;
  expects: {};
  choices: (Action | RepairAction)[];
  /** Where the wiring checks of a position found nothing. */
  harness?: HarnessView | null;
}

export interface ScanStep extends PlainStep {
  form: 'scan';
  action: Action;
  expects: { do: 'take' | 'pull' | 'fit' | 'mixed'; position: string; unit: string; may_write?: boolean; asks_part?: boolean };
  choices: never[];
}

export interface ChecklistStep extends PlainStep {
  form: 'checklist';
  action: Action;
  expects: { do: 'seat'; position: string; positions: string[]; unit: string };
  choices: Option[];
}

export interface MeasureStep extends PlainStep {
  form: 'measure';
  action: null;
  /** `units` are those that a figure may have, the likeliest first; `compares`: a figure where it works is wanted, too. */
  expects: { position: string; check: string; units: string[]; compares: boolean };
  choices: MeasureChoice[];
  /** What sound wire would have: one tap away. */
  more: string | null;
  /** Null where the sort of part has no chain. */
  harness: HarnessView | null;
}

/** One segment of the wiring is named; `further` is the check for who doubts it. */
export interface FoundStep extends PlainStep {
  form: 'found';
  action: RepairAction;
  expects: {};
  choices: never[];
  further: MeasureStep | null;
  harness: HarnessView;
}

/** The colour of one wire that leads to a position. */
export interface WireColour {
  line: 'signal' | 'supply' | 'ground';
  colour: string;
}

/** A circuit as a chain, with what its checks said so far. */
export interface HarnessView {
  position: string;
  /** What somebody typed of the pins, and of each wire whose colour was typed. */
  pins: string;
  colours: WireColour[];
  /** Where the fault is now. */
  where: string;
  /** From the sensor to the control unit; what has `branch` lies beside that line. */
  segments: HarnessSegment[];
  /** What was read in this round, in order. */
  readings: { check: string; name: string; reads: 'good' | 'bad' | 'unclear'; value: string; words: string }[];
  /** Null once a segment is named or nothing is left to check. */
  next: HarnessCheck | null;
  /** The wire as it was noted. */
  wire: { size: string; centimetres: number; celsius: number; colour: string; words: string } | null;
  /** The sizes that a wire is noted with. */
  sizes: { id: string; words: string }[];
}

export interface HarnessSegment {
  id: string;
  name: string;
  state: 'sound' | 'possible' | 'named';
  chance: string;
  ppb: number;
  branch: boolean;
}

/** Which check comes next and why; its probes go to the near end of `from` and to `to`, on `line`. */
export interface HarnessCheck {
  check: string;
  why: string;
  minutes: string;
  from: string;
  /** A segment, 'ground' or 'neighbour'; '' where no probe is used. */
  to: string;
  /** '' where it is only looked at. */
  line: '' | 'signal' | 'supply' | 'ground';
}

export interface MeasureChoice extends Action {
  reads: 'good' | 'bad' | 'unclear';
}

export interface NewUnitStep extends PlainStep {
  form: 'new_unit';
  action: Action;
  /** `old` is the sensor that it comes for. */
  expects: { position: string; position_name: string; old: string; part: string };
  choices: SpareChoice[];
}

export interface SpareChoice extends Action {
  note: string;
}

/** What is noted of each position in the check at the end, in the words of the sort of part. */
export interface WalkWords {
  works: string;
  fails: string;
  left: string;
  first: string;
}

export interface WalkStep extends PlainStep {
  form: 'walk';
  action: Action;
  /** `pole`: whether it is done with a pole, so that it can be said where that stands. */
  expects: { positions: Named[]; clear_words: string; asks: WalkWords; pole: boolean };
  choices: never[];
}

/** Where the pole stands, in cm, and what was measured there; `data` is recorded with the walk. */
export interface StandingView {
  problem: string;
  edges: StandingEdge[];
  sound: string;
  judged: { position: string; words: string; fits: boolean }[];
  data: { width?: number; celsius?: number; distances?: { position: string; left: number; tape: number; shown: number }[] };
}

/** `x` is from the left end of the bumper as one faces it; `measured`: width and all places were typed. */
export interface StandingEdge {
  edge: Edge;
  width: number;
  measured: boolean;
  positions: { id: string; name: string; x: number; pole_x: number; pole_y: number }[];
}

export interface WhereToStep extends PlainStep {
  form: 'where_to';
  action: null;
  expects: { do: 'where_to'; unit: string; alone: boolean };
  choices: PlaceChoice[];
}

/** Where a sensor can go. */
export interface PlaceChoice extends Action {
  /** `note`: why it goes there has to be said. */
  wants: '' | 'note';
}

export interface CloseStep extends PlainStep {
  form: 'close';
  /** Null where something stands against it, or where the choices are to be tapped. */
  action: Action | null;
  expects: { do?: 'where_to'; unit?: string; alone?: boolean };
  /** Where the one sensor in hand goes; that closes the job. */
  choices: PlaceChoice[];
}

/** Who entered what; `at` is null for what was on record before anybody's entry. */
export interface Story {
  at: number | null;
  actor: string;
  words: string;
}

/** An answer that settles a contradiction, with the job that it is recorded on; null is none. */
export interface SettleChoice extends Action {
  job: string | null;
}

export interface ContradictionStep extends PlainStep {
  form: 'contradiction';
  /** To scan one of `units`; null where a tap settles it. */
  action: Action | null;
  expects: { do: 'settle'; unit: string; units: string[]; stories: Story[]; waits: string };
  choices: SettleChoice[];
}

/** What contradicts of a sensor, as its own page shows it. */
export interface SettleCard {
  title: string;
  stories: Story[];
  waits: string;
  choices: SettleChoice[];
  others: SettleChoice[];
}

/** Numbers that phones read off a sensor apart, or their corrections of an entry outside any job. */
export interface ApartCard {
  title: string;
  text: string;
  stories: Story[];
  choices: SettleChoice[];
}

export interface DoneStep extends PlainStep {
  form: 'done';
  action: null;
  expects: {};
  choices: never[];
}

// --- what carries a conclusion, and what the figures rest on

export interface EvidenceView {
  carries: string[];
  runner_up: string;
  /** The move that tells it from the runner-up. */
  apart: { sentence: string; results: { result: string; then: string }[] } | null;
}

export interface AssumptionsView {
  closed: boolean;
  sort: string;
  rates: RateView[];
  confidence: FigureView;
  confidence_ppm: number;
  rates_ppm: Record<string, number>;
  comes_and_goes: ComesAndGoesView;
  /** What the lamps at key-on speak for. */
  lamps: { sentence: string; source: string }[];
  /** What earlier jobs on the vehicle speak for; null without any. */
  comeback: ComebackView | null;
  /** What the yard has taken of its own jobs and this job has not; null for nothing. */
  yard: { sentence: string; words: string; events: Draft[] } | null;
  codes: CodeWeightView[];
  money: MoneyView[];
}

export interface ReturningView {
  vehicle: string;
  jobs: number;
  sentence: string;
  found: string;
  reasons: string[];
}

export interface ComebackView {
  sentences: string[];
  source: string;
  factors: ComebackChoice[];
  halves: ComebackChoice[];
}

export interface ComebackChoice {
  value: number;
  words: string;
  on: boolean;
  events: Draft[];
}

/** A figure in parts per million. */
export interface FigureView {
  words: string;
  source: string;
  value_ppm: number;
  value_words: string;
  default_words: string;
  changed: boolean;
  reset: Draft[];
}

export interface RateView extends FigureView {
  id: string;
}

export interface ComesAndGoesView {
  words: string;
  note: string;
  value: boolean;
  switch_words: string;
  events: Draft[];
  estimate: ShowsEstimate | null;
  /** What a clean test straight after another is worth; null where the fault is always there. */
  again: RateView | null;
}

export interface ShowsEstimate {
  words: string;
  sentence: string;
  source: string;
  used: boolean;
  events: Draft[];
}

export interface CodeWeightView {
  position: string;
  name: string;
  code: string;
  failure_type: string;
  words: string;
  sentence: string;
  source: string;
  on: boolean;
  switch_words: string;
  events: Draft[];
}

/** An amount in minor units; 0 is not given. */
export interface MoneyView {
  id: 'labour_per_hour' | 'part_price' | 'wrong_purchase';
  words: string;
  value: number;
}

export interface ReportView {
  id: string;
  sort: string;
  vehicle: string;
  vin: string;
  complaint: string;
  opened_at: number;
  closed: { at: number; actor: string; note: string } | null;
  by: string[];
  headline: string;
  standing: string;
  sure: string;
  found: string[];
  proof: string[];
  replaced: string[];
  done: { at: number | null; sentence: string; mark: Mark }[];
  cautions: string[];
  trail: TrailView;
  photos: { before: ReportPicture[]; during: ReportPicture[]; after: ReportPicture[] };
}

// --- opening a job

export interface LayoutPosition {
  id: string;
  name: string;
  edge: Edge;
  group: string;
  reach_minutes: number;
  x?: number;
  y?: number;
  part?: string;
  pins?: string;
}

/** A position as a person drew it. */
export interface DrawnPosition {
  name: string;
  group: string;
  reach_minutes: number;
  x: number;
  y: number;
  part: string;
  pins: string;
}

export interface SortView {
  id: string;
  outline: 'vehicle' | 'engine';
  /** What a job records that begins on a drawn layout. */
  layout: string;
}

export interface LayoutView {
  id: string;
  sort: string;
  /** What a job records that begins on it. */
  layout: string;
  /** Of a drawn one, in a person's own words; else empty. */
  model: string;
  /** What it can be drawn on from. */
  drawn: DrawnPosition[];
  outline: 'vehicle' | 'engine';
  complaints: string[];
  name: string;
  positions: LayoutPosition[];
  /** What the positions are called, by id; their `name` is what an entry keeps. */
  called: Record<string, string>;
}

/** What a next job on a vehicle starts from. */
export interface VehicleView {
  id: string;
  /** Its plate or VIN is what was typed. */
  is_it: boolean;
  name: string;
  vin: string;
  plate: string;
  layout: string;
  part: string;
  positions: LayoutPosition[];
  called: Record<string, string>;
  opened_at: number;
  /** What is recorded with the opening of a next job. */
  opens_with: Draft[];
  open_job: string;
}

/** What is known of one vehicle. */
export interface VehiclePageView {
  id: string;
  name: string;
  vin: string;
  board: BoardView;
  positions: VehiclePosition[];
  /** What was found at no position of the last job. */
  elsewhere: VehicleFound[];
  /** The latest first. */
  jobs: VehicleJob[];
}

export interface VehiclePosition {
  id: string;
  name: string;
  unit: string;
  shown: string;
  words: string;
  /** 0 where it has been there since before the first job. */
  since: number;
  found: VehicleFound[];
}

export interface VehicleFound {
  job: string;
  at: number;
  sentence: string;
}

export interface VehicleJob {
  id: string;
  at: number;
  /** 0 while it is open. */
  closed: number;
  complaint: string;
  sentence: string;
  warranty: string;
}

// --- one sensor

export interface UnitView {
  id: string;
  sort: string;
  code: string;
  shown: string;
  was: string[];
  part: string;
  serial: string;
  place: Place;
  where: string;
  /** Where it was found bad; "" where it never was. */
  bad: string;
  job: string | null;
  address: string;
  disputed: boolean;
  claims: UnitClaim[];
  elsewhere: UnitClaim[];
  /** Null where nothing of it contradicts, or no job is about that. */
  settle: SettleCard | null;
  /** What phones said apart of it outside its places, each once. */
  apart: ApartCard[];
  /** The readings of its numbers that stand; a further one names them (`over`). */
  noted: string[];
  carried: { labels: { code: string; shown: string }[]; trouble: string };
  labels: UnitLabel[];
  lost: { at: number; count: number; settled: string; words: string }[];
  finding: Finding | null;
  findings: Finding[];
  history: UnitHistory;
  tests: UnitTest[];
  tests_words: string;
  custody: Custody[];
  custody_words: string;
  moves: Transfer[];
  returns: ReturnView[];
  photos: UnitPhoto[];
  jobs: UnitJob[];
  trail: Station[];
  next: UnitNext;
}

export interface UnitClaim extends Claim {
  /** Empty where the place is no position. */
  position: string;
  job: string | null;
}

export interface UnitLabel {
  at: number;
  code: string;
  shown: string;
  sentence: string;
  state: 'on' | 'void';
  void_at: number | null;
}

/** What the tests of a job say of it; `chance` in parts per billion. */
export interface Finding {
  at: number;
  job: string;
  title: string;
  complaint: string;
  standing: 'bad' | 'cleared' | 'open';
  chance: number;
  sentence: string;
  sure: string;
  rests_on: string;
}

/** What it did on other jobs; `chance` in parts per billion. */
export interface UnitHistory {
  known: boolean;
  vehicles: number;
  tests: number;
  passed: number;
  faulted: number;
  explained: number;
  chance: number;
  condemned: boolean;
  trusted: boolean;
  sentence: string;
  source: string;
}

export interface UnitTest {
  at: number;
  n: number;
  job: string;
  vehicle: string;
  position: string;
  mark: Mark;
  sentence: string;
  why: string;
}

export interface Custody {
  at: number;
  actor: string;
  how: How;
  how_words: string;
  job: string | null;
  vehicle: string;
  sentence: string;
  note: string;
  handover: boolean;
}

/** A change of custody as it was recorded. */
export interface Transfer {
  at: number;
  actor: string;
  event: string;
  what: string;
  position: string;
  how: How;
  job: string | null;
  code?: string;
  note?: string;
  /** Plugged in for a test and not pushed home; left out where it was never so. */
  hanging?: boolean;
  /** Tapped while nothing else was in hand. */
  alone?: boolean;
}

export interface UnitPhoto extends JobPhoto {
  words: string;
  job: string;
}

export interface UnitJob {
  id: string;
  title: string;
  complaint: string;
  opened_at: number;
  closed: boolean;
  sentence: string;
}

export type Station = JobStation | PlaceStation | PresentStation;

export interface JobStation {
  kind: 'job';
  at: number;
  job: string;
  title: string;
  complaint: string;
  trail: TrailView | null;
}

export interface PlaceStation {
  kind: 'place';
  at: number;
  words: string;
}

export interface PresentStation {
  kind: 'now';
  at: number | null;
  words: string;
}

export interface UnitNext {
  to: 'find' | 'job' | 'jobs' | 'slip';
  words: string;
  sentence: string;
  places: PlaceAction[];
}

export interface PlaceAction extends PlaceChoice {
  place: Place;
}

// --- what a code or a label means

/** The code is not one of a sensor on record, or not meant here. */
export interface Stopped {
  outcome: 'stop';
  title: string;
  sentence: string;
  more: string;
  shown: string;
  events: Draft[];
}

export interface OtherHost {
  outcome: 'other_host';
  code: string;
  host: string;
  title: string;
  sentence: string;
}

export interface Foreign {
  outcome: 'foreign';
  holds: string;
  title: string;
  sentence: string;
  /** Typed at the counter: the sensors that have it as their serial number. */
  sensors?: FoundUnit[];
}

export interface Mistyped {
  outcome: 'mistyped';
  title: string;
  sentence: string;
  /** As of `Foreign`. */
  sensors?: FoundUnit[];
}

export interface OurCode {
  outcome: 'ours';
  code: string;
  shown: string;
}

/** The right label; `unit` is null where it is on no sensor yet. */
export interface OurLabel extends OurCode {
  unit: string | null;
  sentence: string;
  events: Draft[];
  /** Where it can be, at a step that asks for that: as somebody said, and all else. */
  choices?: SettleChoice[];
  others?: SettleChoice[];
}

export type CodeAnswer = OurCode | OtherHost | Foreign | Mistyped;
export type ScanAnswer = OurLabel | Stopped | OtherHost | Foreign | Mistyped;

export type SymbolAnswer = SymbolNumbers | SymbolChoices | SymbolTold;

export interface SymbolNumbers {
  outcome: 'numbers';
  part: string;
  serial: string;
  sentence: string;
}

export interface SymbolChoice {
  part: string;
  serial: string;
  words: string;
}

export interface SymbolChoices {
  outcome: 'choices';
  title: string;
  sentence: string;
  choices: SymbolChoice[];
}

export interface SymbolTold {
  outcome: 'broken' | 'foreign' | 'label' | 'no_numbers';
  title: string;
  sentence: string;
}

// --- the parts counter

export type Decision = 'accept' | 'hold' | 'refuse';

export type CounterAnswer = CounterCard | OtherHost | Foreign | Mistyped;

export interface CounterCard {
  outcome: 'unit';
  unit: string;
  code: string;
  shown: string;
  part: string;
  serial: string;
  job: string | null;
  from: string;
  headline: string;
  proposed: Decision;
  word: string;
  reasons: string[];
  against: string[];
  checks: CounterCheck[];
  decisions: CounterDecision[];
  read: { part: string; serial: string; compared: '' | 'same' | 'other' };
  received: Draft;
  photos: CounterPicture[];
  waiting: boolean;
  /** The digest of its record from another shop, where one is kept here; '' where none is. */
  record_file: string;
  /** Whether there are pictures to compare the part with, here or in that record. */
  pictured: boolean;
  /** By what other counters of a chain find it again. */
  keys: string[];
}

export interface CounterCheck {
  rule: string;
  state: 'pass' | 'hold' | 'fail' | 'note';
  title: string;
  sentence: string;
}

/** What a record from elsewhere is evidence of: the rules that it passes, leaves open, fails. */
export interface RecordWeighed {
  part: string;
  serial: string;
  passes: string[];
  holds: string[];
  fails: string[];
}

export interface CounterDecision {
  decision: Decision;
  word: string;
  past: string;
  overrules: boolean;
  events: Draft[];
  after: Action[];
}

export interface Decided {
  at: number;
  actor: string;
  event: string;
  decision: Decision;
  word: string;
  past: string;
  proposed: Decision;
  proposed_word: string;
  overrule: string;
  reasons: string[];
  about: string[];
  signed: string;
}

/** Of which unit a line at the counter tells. */
export interface ReturnedUnit {
  unit: string;
  code: string;
  shown: string;
  part: string;
  serial: string;
  job: string | null;
  vehicle: string;
  complaint: string;
  how: How | '';
  twice: boolean;
}

export interface WaitingReturn extends ReturnedUnit {
  at: number;
  by: string;
  held: Decided | null;
}

export interface FoundUnit extends ReturnedUnit {
  decided: Decided | null;
}

export interface FoundReturn extends FoundUnit {
  /** None has exactly what was typed: this comes close. */
  near: boolean;
  /** What it was found by and its row does not say. */
  found_by: string[];
}

export interface DecidedLine extends ReturnedUnit, Decided {
  stands: boolean;
  serial_read: string;
  /** The other shop whose label it is, or empty. */
  host: string;
}

export interface DecidedView {
  total: number;
  counts: { decision: Decision; word: string; past: string; count: number }[];
  lines: DecidedLine[];
}

export interface ReturnView {
  at: number;
  actor: string;
  event: string;
  how: How;
  code: string;
  part: string;
  serial: string;
  compared: '' | 'same' | 'other';
  note: string;
  job: string | null;
  twice: boolean;
  received: string;
  decision: ReturnDecision | null;
  decisions: Decided[];
}

export interface ReturnDecision extends Decided {
  sentence: string;
}

// --- labels that this phone prints

export interface BatchLine {
  batch: string;
  id: number;
  layout: string;
  made_at: number;
  printed: number;
  finished: boolean;
  counts: Record<string, number>;
}

export interface BatchView {
  batch: string;
  id: number;
  layout: string;
  options: Record<string, string | number>;
  labels: BatchLabel[];
}

export interface BatchLabel {
  code: string;
  shown: string;
  state: string;
  unit: string | null;
  reason: string | null;
}

/** What comes out of a layout; with a `fault`, why nothing does. */
export type LabelPlan = LabelPlanned | LabelFault;

export interface LabelPlanned {
  fault: '';
  summary: string;
  warnings: string[];
  rule: string;
  a_page: number;
  most: number;
}

export interface LabelFault {
  fault: string;
  may_force?: boolean;
}

/** Pages to draw; lengths in dots, but `paper` in hundredths of a millimetre. */
export interface LabelPages {
  paper: [number, number];
  dpi: number;
  /** A module of a symbol. */
  dots: number;
  version: number;
  level: 'M' | 'Q' | 'H';
  pages: LabelPage[];
}

export interface LabelPage {
  /** x, y, width, height */
  boxes: [number, number, number, number][];
  /** x, y, size in 1/100 dots, text, centred, turned, pitch of its letters */
  lines: [number, number, number, string, boolean, boolean, number][];
  /** text, x, y */
  symbols: [string, number, number][];
  /** Whether there is a bar at the foot to check the print with. */
  ruler: boolean;
}
