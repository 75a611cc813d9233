/**
 * Memory in use after a collection, bytes, buffers included, of a page or worker that takes protocol commands.
 * @param {(method: string) => Promise<any>} send
 * @returns {Promise<number>}
 */
export async function usedMemory(send) {
  await send('HeapProfiler.collectGarbage');
  const { usedSize, backingStorageSize } = await send('Runtime.getHeapUsage');
  return usedSize + backingStorageSize;
}

/**
 * Sends protocol commands to the worker of the simulation, which has a memory of its own.
 * @param {import('playwright-core').CDPSession} client of the browser
 * @returns {Promise<(method: string) => Promise<any>>}
 */
export async function workerSession(client) {
  const { targetInfos } = await client.send('Target.getTargets');
  const target = targetInfos.find(({ type, url }) => type === 'worker' && url.includes('axisWorker'));
  if (!target) throw new Error('The page has no simulation.');
  const { sessionId } = await client.send('Target.attachToTarget', {
    targetId: target.targetId,
    flatten: false,
  });
  const waiting = new Map();
  client.on('Target.receivedMessageFromTarget', ({ message }) => {
    const { id, result } = JSON.parse(message);
    waiting.get(id)?.(result);
  });
  let id = 0;
  return (method) =>
    new Promise((answer) => {
      waiting.set(++id, answer);
      client.send('Target.sendMessageToTarget', { sessionId, message: JSON.stringify({ id, method }) });
    });
}
