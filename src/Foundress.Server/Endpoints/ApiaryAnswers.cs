namespace Foundress.Server.Endpoints;

/// <summary>A colony by id and name.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name.</param>
internal sealed record NamedColony(Guid Id, string Name);

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

/// <summary>What is due.</summary>
/// <param name="Today">The day it was worked out for.</param>
/// <param name="Total">How many things are due in all.</param>
/// <param name="Items">The first of them.</param>
internal sealed record DueAnswer(DateOnly Today, int Total, IReadOnlyList<DueLine> Items);

/// <summary>An apiary in the list of all.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="Urgency">What it asks for: overTheLine, notSettled, overdue, answered or rest.</param>
/// <param name="Sentence">What matters and what to do next.</param>
/// <param name="Living">How many colonies live there.</param>
/// <param name="Due">How many things are due there.</param>
internal sealed record ApiaryLine(Guid Id, string Name, string Urgency, string Sentence, int Living, int Due);

/// <summary>All apiaries, those that need their keeper first.</summary>
/// <param name="Today">The day it was worked out for.</param>
/// <param name="Apiaries">The apiaries.</param>
internal sealed record ApiariesAnswer(DateOnly Today, IReadOnlyList<ApiaryLine> Apiaries);

/// <summary>The last jar of a colony.</summary>
/// <param name="On">The day it was taken.</param>
/// <param name="Per100Bees">Mites counted per 100 bees.</param>
/// <param name="Lower">Lower end of the interval.</param>
/// <param name="Upper">Upper end of the interval.</param>
/// <param name="Standing">Where it stands to the line then in force: below, unclear or above; none when it is not judged.</param>
/// <param name="Method">How it was counted.</param>
internal sealed record LastJar(DateOnly On, double Per100Bees, double Lower, double Upper, string? Standing, string Method);

/// <summary>A living colony of an apiary.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="Jar">Its last jar within a year; none when there is none.</param>
internal sealed record ColonyLine(Guid Id, string Name, LastJar? Jar);

/// <summary>How an apiary stands.</summary>
/// <param name="Today">The day it was worked out for.</param>
/// <param name="Apiary">The apiary.</param>
/// <param name="Colonies">Its living colonies by name.</param>
/// <param name="Dues">What is due there.</param>
internal sealed record ApiaryAnswer(DateOnly Today, ApiaryLine Apiary, IReadOnlyList<ColonyLine> Colonies, IReadOnlyList<DueLine> Dues);
