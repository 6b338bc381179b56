namespace Foundress.Book.Dues;

/// <summary>How something due stands to today.</summary>
public enum DueTime
{
    /// <summary>Its last day has passed.</summary>
    Overdue,

    /// <summary>It can be done today.</summary>
    Now,

    /// <summary>Its first day lies ahead.</summary>
    Coming,

    /// <summary>The keeper put it off.</summary>
    PutOff,
}
