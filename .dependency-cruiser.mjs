/**
 * Who may import what. Each list of floors goes from the lowest to the highest: a room imports rooms of lower floors and nothing
 * of its own floor but itself. DEVELOPERS.md tells what each room holds.
 */
const FLOORS = {
  shared: [
    ['core'],
    ['axis', 'motion', 'protocol'],
    ['figures'],
    ['study', 'lesson', 'tolerance'],
    ['sizing', 'sheet'],
    ['verdict'],
    ['files'],
  ],
  workers: [
    ['math'],
    ['model'],
    ['control', 'command', 'solver'],
    ['run'],
    ['analysis'],
    ['identify', 'pretune', 'timelapse'],
    ['accuracy', 'tolerance'],
    ['study'],
    ['entry'],
  ],
  src: [
    ['ui', 'history'],
    ['clients'],
    ['plot'],
    ['bench'],
    ['drawings'],
    ['charts', 'gauges', 'compare', 'stage', 'loop'],
    ['tuning', 'tolerance'],
    ['studyState'],
    ['sideBySide'],
    ['paper'],
    ['study', 'lessons'],
    ['app'],
  ],
};

/** Where each package of the page and of the simulation is known. */
const PACKAGES = {
  odex: '^workers/solver/',
  comlink: '^(workers/entry|src/clients)/',
  three: '^src/(stage|sideBySide)/',
  'lil-gui': '^src/tuning/',
};

const forbid = (name, from, to) => ({ name, severity: 'error', from, to });

const between = (top) =>
  FLOORS[top].flatMap((rooms, floor) =>
    rooms.map((room) => {
      const barred = [...rooms.filter((other) => other !== room), ...FLOORS[top].slice(floor + 1).flat()];
      return forbid(
        `${top}-${room}-imports-downwards`,
        { path: `^${top}/${room}/` },
        { path: barred.length > 0 ? `^${top}/(${barred.join('|')})/` : '^$' },
      );
    }),
  );

export default {
  forbidden: [
    forbid('no-circle', {}, { circular: true }),
    forbid('shared-stands-alone', { path: '^shared/' }, { path: '^(scenes|workers|src|tests)/' }),
    forbid('scenes-are-data', { path: '^scenes/' }, { path: '^(workers|src|tests)/' }),
    forbid('simulation-knows-no-page', { path: '^workers/' }, { path: '^(src|tests)/' }),
    forbid(
      'simulation-needs-no-files',
      { path: '^workers/', pathNot: '^workers/entry/' },
      { path: '^(scenes|shared/(sheet|sizing|verdict|files))/' },
    ),
    forbid('page-only-starts-workers', { path: '^src/' }, { path: '^(workers|tests)/' }),
    forbid(
      'parts-of-the-study-know-no-other',
      { path: '^src/study/(job|sizing|results|parts)/' },
      { path: '^src/study/', pathNot: ['^src/study/$1/', '^src/study/parts/'] },
    ),
    ...Object.keys(FLOORS).flatMap(between),
    ...Object.entries(PACKAGES).map(([name, where]) =>
      forbid(
        `${name}-has-one-home`,
        { path: '^(shared|scenes|workers|src)/', pathNot: where },
        { path: `^node_modules/${name}/` },
      ),
    ),
  ],
  options: { parser: 'swc', tsPreCompilationDeps: true, doNotFollow: { path: 'node_modules' } },
};
