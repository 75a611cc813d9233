import { DRIVE_TYPES } from '../../../shared/core/scene.ts';
import { sizingAgrees } from './simulated.ts';

for (const driveType of DRIVE_TYPES) sizingAgrees(driveType);
