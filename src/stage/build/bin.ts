/** Collects what holds memory of the graphics card, so that whoever made it can give all of it back at once. */
export class Bin {
  readonly #things: { dispose(): void }[] = [];

  own<T extends { dispose(): void }>(thing: T): T {
    this.#things.push(thing);
    return thing;
  }

  dispose(): void {
    for (const thing of this.#things.splice(0)) thing.dispose();
  }
}
