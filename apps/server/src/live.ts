import type { Event } from '@coveline/api';
import { getJob, type Message, type Store } from '@coveline/store';
import { jobAnswer } from './job-answer.ts';

/** Where events go: one open connection. */
export interface Subscriber {
  readonly send: (event: Event) => void;
  readonly close: () => void;
}

/** Tells the connected clients, and the jobs that run here, what was committed to the database. */
export interface Live {
  /** Returns the way to unsubscribe. */
  readonly subscribe: (subscriber: Subscriber) => () => void;
  /** The signal by which a job that runs in this process learns that it was cancelled. */
  readonly cancellation: (job: string) => AbortSignal;
  /** Ends the connections to all clients. */
  readonly hangUp: () => void;
  /** Hears nothing any more. */
  readonly close: () => Promise<void>;
}

export async function startLive(store: Store): Promise<Live> {
  const subscribers = new Set<Subscriber>();
  const running = new Map<string, AbortController>();

  const hangUp = () => {
    // Clients read everything again when they reconnect.
    for (const subscriber of subscribers) subscriber.close();
    subscribers.clear();
  };
  const broadcast = (event: Event) => {
    for (const subscriber of subscribers) subscriber.send(event);
  };

  async function tell(message: Message): Promise<void> {
    if ('machine' in message) return broadcast({ type: 'machine', ...message });
    const row = await store.transaction((tx) => getJob(tx, message.job));
    if (row.state === 'waiting') store.engine.wake();
    if (row.state === 'cancelled') running.get(row.id)?.abort();
    if (row.state !== 'running' && row.state !== 'waiting') running.delete(row.id);
    broadcast({ type: 'job', job: jobAnswer(row) });
  }

  /** One after the other, so that events keep the order of the changes. */
  let queue = Promise.resolve();
  const stopListening = await store.listen((message) => {
    queue = queue.then(() => tell(message)).catch((error: Error) => process.emitWarning(error));
  }, hangUp);

  return {
    subscribe: (subscriber) => {
      subscribers.add(subscriber);
      return () => subscribers.delete(subscriber);
    },
    cancellation: (job) => {
      const controller = new AbortController();
      running.set(job, controller);
      return controller.signal;
    },
    hangUp,
    close: async () => {
      await stopListening();
      await queue;
    },
  };
}
