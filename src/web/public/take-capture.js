// Hands the samples of the microphone to the page as they come. Runs on the audio thread; loaded by src/web/takes/recorder.ts.
// A script of its own, because an AudioWorklet takes a URL and the content security policy allows none made from text.

class TakeCapture extends AudioWorkletProcessor {
  process([input]) {
    const [left, right] = input ?? [];
    if (left !== undefined) {
      const samples = new Float32Array(left);
      if (right !== undefined)
        for (let i = 0; i < samples.length; i++) samples[i] = (samples[i] + right[i]) / 2;
      // Where in the audio clock the first of these samples lies.
      this.port.postMessage({ at: currentTime, samples }, [samples.buffer]);
    }
    return true;
  }
}

registerProcessor('take-capture', TakeCapture);
