namespace Foundress.Book.Planning;

/// <summary>Why a control cannot follow those before it in a plan.</summary>
internal enum PlanConflict
{
    None = -1,
    Overlap,
    Interval,
    Rotation,
    SealedBrood,
    NoBrood,
}
