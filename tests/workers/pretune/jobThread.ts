import { parentPort } from 'node:worker_threads';
import { doJob, type Job } from '../../../workers/pretune/jobs.ts';

/** A thread that does one job after the other. What goes wrong ends it, and the pool sees the error. */
parentPort?.on('message', (job: Job) => parentPort?.postMessage(doJob(job)));
