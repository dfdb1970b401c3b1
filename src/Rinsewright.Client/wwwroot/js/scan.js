// The camera, and what it sees in grey. Four bytes in front: width and height.
const most = 480;

export async function start(video) {
  if (!navigator.mediaDevices?.getUserMedia) return "insecure";
  try {
    video.srcObject = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } });
    await video.play();
    return "";
  } catch (error) {
    return `${error.message ?? error}`.replace(/\.*$/, ".");
  }
}

export function look(video) {
  const scale = Math.min(1, most / Math.max(video.videoWidth, video.videoHeight, 1));
  const width = Math.round(video.videoWidth * scale);
  const height = Math.round(video.videoHeight * scale);
  if (width < 1 || height < 1) return new Uint8Array(0);
  const canvas = new OffscreenCanvas(width, height);
  const drawing = canvas.getContext("2d", { willReadFrequently: true });
  drawing.drawImage(video, 0, 0, width, height);
  const { data } = drawing.getImageData(0, 0, width, height);
  const grey = new Uint8Array(4 + width * height);
  grey.set([width >> 8, width & 255, height >> 8, height & 255]);
  // Luma of ITU-R BT.601 in 256ths.
  for (let i = 0; i < width * height; i++) {
    grey[4 + i] = (data[4 * i] * 77 + data[4 * i + 1] * 150 + data[4 * i + 2] * 29) >> 8;
  }
  return grey;
}

export function stop(video) {
  for (const track of video?.srcObject?.getTracks() ?? []) track.stop();
  if (video) video.srcObject = null;
}
