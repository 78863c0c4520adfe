import { m } from '../messages/index.ts';
import { Link } from '../routing/link.tsx';

interface Props {
  readonly error: Error;
  /** Offers the way back to the machines. */
  readonly toStart?: boolean;
}

/** The sentence that says what went wrong and what to do, in place of what could not be shown. */
export function Trouble({ error, toStart = false }: Props) {
  return (
    <main id="main" className="trouble" tabIndex={-1}>
      <h1>{m.problem.title}</h1>
      <p role="alert">{error.message}</p>
      {toStart ? (
        <p>
          <Link to={{ at: 'start' }}>{m.problem.toStart}</Link>
        </p>
      ) : null}
    </main>
  );
}
