using Foundress.Knowledge;

namespace Foundress.Book.Records;

/// <summary>
/// How this operation judges and shows things: a field that is not given stays as it was, and of two changes to the same
/// field the later one holds.
/// </summary>
/// <param name="OperationName">What the keeper calls the operation.</param>
/// <param name="LinePolicy">Id of the lines jars are judged by, from the knowledge files; <c>own</c> for the two numbers below.</param>
/// <param name="OwnWatch">The keeper's own line from which a control may be needed, in mites per 100 bees.</param>
/// <param name="OwnAct">The keeper's own line above which a control is needed, in mites per 100 bees.</param>
/// <param name="SureBelow">Chance of being over the line up to which a jar counts as below it, 0 to 0.5.</param>
/// <param name="SureAbove">Chance of being over the line from which a jar counts as above it, 0.5 to 1.</param>
/// <param name="Confidence">Confidence of every interval shown, 0.5 to 0.999.</param>
/// <param name="Units">Metric or US customary.</param>
/// <param name="JarMeasure">Id of the measure the keeper's scoop is taken as.</param>
/// <param name="ScoopBees">The keeper's own scoop: the usual number of bees in it, 50 to 2,000.</param>
/// <param name="ScoopLogSpread">Spread of that number (standard deviation of its natural logarithm), 0.01 to 1.</param>
/// <param name="Jurisdiction">Whose law the labels follow.</param>
/// <param name="CertifiedOrganic">Whether the colonies are kept as certified organic.</param>
/// <param name="Gear">Ids of the gear for controls the keeper has, from the knowledge files.</param>
/// <param name="CountedJarsTeach">Whether an uncounted jar is taken as the writer's own counted jars teach, once there are enough; yes when not given.</param>
/// <param name="FallLines">Id of the lines that natural falls are judged by; none when not given.</param>
/// <param name="DroneLines">Id of the lines that opened drone brood is judged by; none when not given.</param>
/// <param name="WorkerLines">Id of the lines that opened worker brood is judged by; none when not given.</param>
/// <param name="Tolerance">The chance of standing over the line that a plan of controls may leave, 0.01 to 0.5.</param>
public sealed record PolicyRecord(
    string? OperationName = null,
    string? LinePolicy = null,
    double? OwnWatch = null,
    double? OwnAct = null,
    double? SureBelow = null,
    double? SureAbove = null,
    double? Confidence = null,
    UnitSystem? Units = null,
    string? JarMeasure = null,
    double? ScoopBees = null,
    double? ScoopLogSpread = null,
    Jurisdiction? Jurisdiction = null,
    bool? CertifiedOrganic = null,
    IReadOnlyList<string>? Gear = null,
    bool? CountedJarsTeach = null,
    string? FallLines = null,
    string? DroneLines = null,
    string? WorkerLines = null,
    double? Tolerance = null) : Record;
