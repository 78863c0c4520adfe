import type { Job, Event as LiveEvent, Machine } from '@coveline/api';
import { useEffect } from 'react';
import { invalidateReviews, keys, queryClient } from './queries.ts';

/** Takes over a job's state, and what its end makes new. */
export function acceptJob(job: Job): void {
  queryClient.setQueryData<Job[]>(keys.jobs(job.machine), (jobs) =>
    jobs ? [job, ...jobs.filter((j) => j.id !== job.id)] : jobs,
  );
  if (job.state === 'waiting' || job.state === 'running') return;
  void queryClient.invalidateQueries({ queryKey: keys.machines });
  void queryClient.invalidateQueries({ queryKey: keys.machine(job.machine) });
  void queryClient.invalidateQueries({ queryKey: keys.jobs(job.machine) });
  if (job.kind === 'survey')
    void queryClient.invalidateQueries({ queryKey: keys.revision(job.machine, job.revision) });
}

/** Listens to the server as long as the page is open. After a break everything shown is read again. */
export function useLiveUpdates(): void {
  useEffect(() => {
    const source = new EventSource('/api/events');
    let broken = false;
    source.onerror = () => {
      broken = true;
    };
    source.onopen = () => {
      if (broken) void queryClient.invalidateQueries();
      broken = false;
    };
    source.onmessage = (message: MessageEvent<string>) => {
      const event = JSON.parse(message.data) as LiveEvent;
      if (event.type === 'job') acceptJob(event.job);
      else {
        const known = queryClient.getQueryData<Machine>(keys.machine(event.machine));
        if (known && known.version >= event.version) return;
        void queryClient.invalidateQueries({ queryKey: keys.machine(event.machine) });
        void queryClient.invalidateQueries({ queryKey: keys.machines });
        void invalidateReviews(event.machine);
      }
    };
    return () => source.close();
  }, []);
}
