import type { WearCommands } from '../../shared/protocol/wear.ts';
import { wearTest } from '../accuracy/wearTest.ts';
import { serve } from './serve.ts';

/** The wear worker: two positioning tests take seconds, which neither the page nor the running axis must wait for. */
serve({ test: wearTest } satisfies WearCommands);
