using System.Globalization;
using Foundress.Book.Journal;
using Foundress.Book.Planning;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Knowledge;

namespace Foundress.Book.Tests.Planning;

/// <summary>A small apiary in July, with jars, an inspection and usual temperatures, in which a plan is wanted.</summary>
internal sealed class JulyApiary
{
    private static readonly double[] Highs = [3, 5, 10, 15, 20, 23, 25, 25, 20, 14, 8, 4];
    private static readonly double[] Lows = [-3, -2, 1, 4, 9, 12, 14, 14, 10, 6, 2, -1];

    public JulyApiary(int colonies = 2, int mites = 5)
    {
        Id = Book.Apiary("Orchard", 48);
        Book.Write(new NormalsRecord(Id, Highs, Lows));
        Book.Write(new PolicyRecord(Jurisdiction: Jurisdiction.UnitedKingdom));
        Colonies = [.. Enumerable.Range(1, colonies).Select(n => Book.Colony(Id, $"{n}", new DateOnly(2026, 3, 1)))];
        foreach (var colony in Colonies)
        {
            Book.Jar(colony, Today.AddDays(-3), mites);
            Book.Write(new InspectionRecord(colony, Today.AddDays(-3), FramesOfBees: 14, FramesOfBrood: 7, SupersOn: false));
        }
    }

    public static DateOnly Today { get; } = new(2026, 7, 20);

    /// <summary>Little work for tests; what is searched and how is the same.</summary>
    public static PlanOptions Quick { get; } = new() { Particles = 128, SearchParticles = 16, SearchColonies = 2, Runs = 40, Ahead = 126, Step = 14 };

    public TestBook Book { get; } = new();

    public ApiaryId Id { get; }

    public IReadOnlyList<ColonyId> Colonies { get; }

    public Apiary Apiary => Book.State.Apiaries[Id];

    public ControlPlanner Planner => new(Book.State, TestBook.Knowledge, CultureInfo.InvariantCulture);

    public ControlPlans Plans(PlanOptions? options = null) => Planner.Of(Apiary, Today, options ?? Quick);
}
