using System.Runtime.Versioning;

namespace Foundress.Web.Shell;

/// <summary>A new version of the program: it waits until the keeper asks for it, and never interrupts a form.</summary>
[SupportedOSPlatform("browser")]
public sealed class AppUpdate
{
    private readonly DirtyForms _forms;
    private bool _takenOver;

    /// <summary>Follows the forms, so that a new version that took over elsewhere is loaded once the last one is clean.</summary>
    public AppUpdate(DirtyForms forms)
    {
        _forms = forms;
        forms.Changed += () =>
        {
            LoadIfTakenOver();
            Changed?.Invoke();
        };
    }

    /// <summary>Told when a new version has arrived, or a form has begun or ceased to hold it back.</summary>
    public event Action? Changed;

    /// <summary>Whether a new version is ready.</summary>
    public bool Waiting { get; private set; }

    /// <summary>Whether a form keeps the new version from being loaded.</summary>
    public bool HeldByForm => _forms.Any;

    /// <summary>Whether the program is on this device for use without a network: <c>starting</c>, <c>ready</c>, <c>none</c> or <c>failed</c>.</summary>
    public static string OfflineState => UpdateModule.OfflineState();

    /// <summary>Why the program is not on this device; empty when it is.</summary>
    public static string OfflineProblem => UpdateModule.OfflineProblem() switch
    {
        "insecure" => ShellTexts.OfflineInsecure,
        "changed" => ShellTexts.OfflineChanged,
        "late" => ShellTexts.OfflineLate,
        var other => other,
    };

    /// <summary>Begins to watch for new versions.</summary>
    public void Watch() => UpdateModule.Watch(
        () =>
        {
            Waiting = true;
            Changed?.Invoke();
        },
        () =>
        {
            _takenOver = true;
            LoadIfTakenOver();
            Changed?.Invoke();
        });

    /// <summary>Takes the new version over; the page is loaded again once it has. Does nothing while a form is being filled in.</summary>
    public void Apply()
    {
        if (_forms.Any)
            Changed?.Invoke();
        else if (_takenOver)
            UpdateModule.Reload();
        else
            UpdateModule.Apply();
    }

    private void LoadIfTakenOver()
    {
        if (!_takenOver)
            return;
        Waiting = true;
        if (!_forms.Any)
            UpdateModule.Reload();
    }
}
