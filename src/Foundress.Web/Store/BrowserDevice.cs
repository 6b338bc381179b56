using System.Runtime.Versioning;

namespace Foundress.Web.Store;

/// <summary>The device through <c>js/device.js</c>.</summary>
[SupportedOSPlatform("browser")]
public sealed class BrowserDevice : IDevice
{
    /// <inheritdoc/>
    public string Theme
    {
        get => DeviceModule.GetTheme();
        set => DeviceModule.SetTheme(value);
    }

    /// <inheritdoc/>
    public void Tick(int milliseconds = 12) => DeviceModule.Tick(milliseconds);

    /// <inheritdoc/>
    public Task<bool> KeepAwakeAsync(bool on, string who) => DeviceModule.KeepAwake(on, who);

    /// <inheritdoc/>
    public string HomeScreen => DeviceModule.HomeScreen();

    /// <inheritdoc/>
    public Task<bool> PutOnHomeScreenAsync() => DeviceModule.PutOnHomeScreen();

    /// <inheritdoc/>
    public void OnHomeScreen(Action callback) => DeviceModule.OnHomeScreen(callback);

    /// <inheritdoc/>
    public void Print() => DeviceModule.Print();

    /// <inheritdoc/>
    public void Download(string name, string type, string text) => DeviceModule.Download(name, type, text);

    /// <inheritdoc/>
    public Task<string> PersistAsync(bool ask) => DeviceModule.Persist(ask);

    /// <inheritdoc/>
    public Task<double> UsedBytesAsync() => DeviceModule.UsedBytes();

    /// <inheritdoc/>
    public void OnReturn(Action callback) => DeviceModule.OnReturn(callback);

    /// <inheritdoc/>
    public void FocusOn(string selector) => DeviceModule.FocusFirst(selector);

    /// <inheritdoc/>
    public void FocusFirstProblem() => DeviceModule.FocusFirst("[aria-invalid='true']");
}
