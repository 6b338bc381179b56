namespace Foundress.Server.Running;

/// <summary>How the server writes what happens.</summary>
public enum LogForm
{
    /// <summary>Lines for a person at the screen; only what is out of the ordinary.</summary>
    Plain,

    /// <summary>A JSON object a line, for a program that gathers logs; a line for every request besides.</summary>
    Json,
}
