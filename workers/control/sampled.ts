/** What a drive samples of its axis at one instant, SI. One object is made once and filled again and again. */
export class Sampled {
  time = 0;
  /** Currents of all motors together. */
  id = 0;
  iq = 0;
  /** Of the side that the position encoder sits on, and of the motor, where the motor encoder of dual-loop control sits. */
  position = 0;
  motorPosition = 0;

  /** i_d² + i_q². */
  get currentSquared(): number {
    return this.id * this.id + this.iq * this.iq;
  }
}
