/** What is made inside the compiled library lives there until it is deleted. */
interface Made {
  delete(): void;
}

interface Mat extends Made {
  readonly data: Uint8Array;
  readonly data32F: Float32Array;
  readonly data32S: Int32Array;
}

interface MatVector extends Made {
  size(): number;
  get(index: number): Mat;
}

/** The part of OpenCV that finds markers (5.0.0, through @techstark/opencv-js, whose own types lack it). */
export interface OpenCv {
  readonly CV_8UC1: number;
  readonly DICT_4X4_50: number;
  readonly Mat: new (rows?: number, columns?: number, type?: number) => Mat;
  readonly MatVector: new () => MatVector;
  getPredefinedDictionary(name: number): Made;
  readonly aruco_DetectorParameters: new () => Made;
  readonly aruco_RefineParameters: new (minRepDistance: number, errorCorrectionRate: number, checkAllOrders: boolean) => Made;
  readonly aruco_ArucoDetector: new (
    dictionary: Made,
    parameters: Made,
    refining: Made,
  ) => Made & { detectMarkers(picture: Mat, corners: MatVector, ids: Mat): void };
}
