namespace Foundress.Web.Store;

/// <summary>What the device under the browser can do. Abilities it lacks are passed over in silence.</summary>
public interface IDevice
{
    /// <summary>The theme in use: <c>auto</c>, <c>light</c>, <c>dark</c> or <c>sun</c>.</summary>
    string Theme { get; set; }

    /// <summary>A short vibration, so that a tap is felt through a glove.</summary>
    /// <param name="milliseconds">How long, 1 to 500.</param>
    void Tick(int milliseconds = 12);

    /// <summary>Keeps the screen from going dark, or lets it once nobody wants it awake any more.</summary>
    /// <param name="on">Whether it is to stay awake.</param>
    /// <param name="who">Who wants it: each lets go only of its own wish.</param>
    /// <returns>Whether the device agreed.</returns>
    Task<bool> KeepAwakeAsync(bool on, string who);

    /// <summary>
    /// Whether the app is on the home screen: <c>done</c>; <c>offered</c> when the browser will ask; <c>byhand</c> when only the
    /// keeper can do it from the browser's menu; <c>none</c> when this browser cannot.
    /// </summary>
    string HomeScreen { get; }

    /// <summary>Has the browser ask whether to put the app on the home screen.</summary>
    /// <returns>Whether the keeper said yes.</returns>
    Task<bool> PutOnHomeScreenAsync();

    /// <summary>Calls back when <see cref="HomeScreen"/> has changed.</summary>
    void OnHomeScreen(Action callback);

    /// <summary>Hands the keeper a file.</summary>
    void Download(string name, string type, string text);

    /// <summary>Opens the browser's own printing of this page.</summary>
    void Print();

    /// <summary>Whether the browser has promised not to clear this app's store: <c>yes</c>, <c>no</c> or <c>unknown</c>.</summary>
    /// <param name="ask">True to ask for the promise when it is not given yet.</param>
    Task<string> PersistAsync(bool ask);

    /// <summary>Bytes this app takes up on the device, or -1 when the browser does not say.</summary>
    Task<double> UsedBytesAsync();

    /// <summary>Calls back when the app comes back to the front or the network returns.</summary>
    void OnReturn(Action callback);

    /// <summary>Moves the focus to the first element a selector names, and brings it into view.</summary>
    void FocusOn(string selector);

    /// <summary>Moves the focus to the first field that needs a look.</summary>
    void FocusFirstProblem();
}
