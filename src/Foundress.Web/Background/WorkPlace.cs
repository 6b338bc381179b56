namespace Foundress.Web.Background;

/// <summary>Where long work is done.</summary>
public enum WorkPlace
{
    /// <summary>In a worker beside the page, which stays at hand.</summary>
    Beside,

    /// <summary>On the page's own thread between two frames, because no worker can run here.</summary>
    OnPage,
}
