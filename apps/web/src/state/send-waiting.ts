import type { Machine } from '@coveline/api';
import { useEffect } from 'react';
import { api } from '../api/client.ts';
import { ApiError } from '../api/request.ts';
import { accept, refuse } from './changes.ts';
import { removeFirstWaiting, useWaiting, waiting } from './waiting.ts';

/** How often the server is asked while something waits. */
const every_ms = 5000;

let underWay: Promise<void> | null = null;

/** Sends what waits, oldest first, until the server does not answer. */
export function sendWaiting(): Promise<void> {
  underWay ??= sendAll().finally(() => {
    underWay = null;
  });
  return underWay;
}

async function sendAll(): Promise<void> {
  for (let first = waiting()[0]; first !== undefined; first = waiting()[0]) {
    let machine: Machine;
    try {
      machine = await api.command(first.machine, first.command);
    } catch (error) {
      if (error instanceof ApiError && error.status === 0) return;
      removeFirstWaiting();
      refuse(first.machine, error as Error);
      continue;
    }
    removeFirstWaiting();
    accept(machine);
  }
}

/** Keeps trying as long as something waits. */
export function useSendWaiting(): void {
  const some = useWaiting() > 0;
  useEffect(() => {
    if (!some) return;
    const send = () => void sendWaiting();
    const timer = setInterval(send, every_ms);
    window.addEventListener('online', send);
    send();
    return () => {
      clearInterval(timer);
      window.removeEventListener('online', send);
    };
  }, [some]);
}
