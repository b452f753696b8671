/** The server's folder, once installed. */
export declare const VSCODE: string;
export declare function install(): void;
