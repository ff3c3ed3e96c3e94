// What passes between the page and the core. The Go side is cmd/browser; a
// test compares the two lists of questions.

/** The questions that the core answers, each with its arguments in order. */
export interface Questions {
  /** calculator, query → its result. */
  compute: [calculator: string, query: string];
  /** calculator, query → a step further from the first answer that compute gave; the result once it is final. */
  refine: [calculator: string, query: string];
  /** calculator, query, output, answer as typed → the marking of a practice problem. */
  mark: [calculator: string, query: string, output: string, answer: string];
  /** calculator, query with ranges, output, seed → fresh numbers. */
  draw: [calculator: string, spread: string, output: string, seed: string];
  /** limit as a query, reading as typed → the judgment. */
  judge: [limit: string, reading: string];
  /** words, way to the root → what was found. The index must be loaded first. */
  find: [words: string, root: string];
  /** card as "right ease days" or "", grade 0 to 5 → the card after it, as query. */
  schedule: [card: string, grade: string];
  /** circuit as the page holds it, changes as a query → the drawing solved again. */
  circuit: [encoded: string, query: string];
}

/** What went wrong with one input; input is "" where no single one is to blame. */
export interface Fault {
  input: string;
  text: string;
}

/** Every answer has the same shape; what a question does not give is absent. */
export interface Answer {
  ok: boolean;
  /** Markup to show, made by the core. */
  html?: string;
  /** One sentence, for a screen reader. */
  say?: string;
  /** The query that a draw filled in, or the card after a schedule. */
  query?: string;
  verdict?: "ok" | "check" | "stop";
  /** True while the answer shown is a first one, and refine makes a better one. */
  more?: boolean;
  /** False where an answer or reading could not be read. */
  read?: boolean;
  faults?: Fault[];
}
