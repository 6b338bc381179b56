namespace Foundress.Server.Endpoints;

/// <summary>One thing to do.</summary>
/// <param name="Key">Names it from day to day.</param>
/// <param name="Kind">What it is: decide, takeOut, sampleAgain, planned, prove, sample, inspect, supersBack, withdrawalOver, supersOn or harvest.</param>
/// <param name="Time">How it stands to today: overdue, now, coming or putOff.</param>
/// <param name="Apiary">Id of the apiary.</param>
/// <param name="ApiaryName">Its name.</param>
/// <param name="From">First day.</param>
/// <param name="To">Last day.</param>
/// <param name="Text">In words.</param>
/// <param name="Colonies">The colonies it is about; empty for the whole apiary.</param>
/// <param name="Control">Id of the use of a control it is about; none otherwise.</param>
/// <param name="PutOffUntil">The day it is shown again; none when it was not put off.</param>
/// <param name="PutOffWhy">Why it was put off; none when it was not.</param>
internal sealed record DueLine(
    string Key, string Kind, string Time, Guid Apiary, string ApiaryName, DateOnly From, DateOnly To, string Text, IReadOnlyList<NamedColony> Colonies, Guid? Control,
    DateOnly? PutOffUntil, string? PutOffWhy);
