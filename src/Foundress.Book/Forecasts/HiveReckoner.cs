using Foundress.Book.Controls;
using Foundress.Book.Forecasting;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Science.Dynamics.Bees;

namespace Foundress.Book.Forecasts;

/// <summary>Turns frames, packages, splits and queens of the book into numbers of bees and cells.</summary>
internal sealed class HiveReckoner(BookState state, BroodSeasons seasons)
{
    /// <summary>A colony given to one that was itself given another, and so on: beyond this the usual colony of the site stands in.</summary>
    private const int DeepestUnion = 2;

    /// <summary>Days within which a split written down twice is one split.</summary>
    private const int SameVisit = 3;

    private readonly Lazy<ControlList> _controls = new(() => ControlList.Of(state, seasons.Knowledge));
    private readonly FrameCounts _frames = seasons.Knowledge.Bees.Frames;
    private readonly QueenTimes _queens = seasons.Knowledge.Bees.Queens;

    internal ColonyBees Bees(ColonyId colony, DateOnly from, DateOnly to, DateOnly asOf) => Bees(colony, from, to, asOf, 0);

    private ColonyBees Bees(ColonyId colony, DateOnly from, DateOnly to, DateOnly asOf, int depth)
    {
        if (!state.Colonies.TryGetValue(colony, out var known))
            throw new ArgumentException($"Colony {colony} is not in the book.", nameof(colony));

        // One site's year for the whole course: where the colony stands at its end.
        var season = seasons.At(state.Apiaries.GetValueOrDefault(known.ApiaryOn(to)));
        BeeEvent[] events =
        [
            // What follows from a record, such as the end of a caging, may lie ahead; what is recorded later does not count.
            .. state.HappeningsOf(colony).Where(one => one.On <= asOf).SelectMany(one => Events(one, colony, season, depth))
                .Concat(state.CoursesOf(colony).Where(course => course.Start <= asOf).SelectMany(Husbandry))
                .Where(one => one.On <= to)
                .OrderBy(one => one.On),
        ];
        BeeSighting[] sightings = [.. state.InspectionsOf(colony).Where(seen => seen.Facts.On <= asOf && seen.Facts.On <= to).Select(seen => Sighting(seen.Facts, events)).OfType<BeeSighting>()];
        return new(season, sightings, events, BeeCourses.Of(season, sightings, events, from, to));
    }

    private BeeSighting? Sighting(InspectionRecord seen, BeeEvent[] events)
    {
        if (seen is { FramesOfBees: null, FramesOfBrood: null })
            return null;

        // Frames are counted before a colony is split or its brood taken out on the same visit.
        var day = events.Any(one => one.On == seen.On && one.Kind is BeeEventKind.Divided or BeeEventKind.BroodTaken or BeeEventKind.DroneBroodTaken) ? Moved(seen.On, -1) : seen.On;
        return _frames.Sighting(day, seen.FramesOfBees, seen.FramesOfBrood);
    }

    private IEnumerable<BeeEvent> Events(Happening happening, ColonyId colony, BroodSeason season, int depth) => happening.Facts switch
    {
        QueenRecord queen => OfQueen(queen),
        ColonyBegan began => OfBeginning(began),
        BroodRemoved { Brood: RemovedBrood.Drone } removed => [BeeEvent.DroneBroodTaken(removed.On, Share(removed.Share))],
        BroodRemoved removed => [BeeEvent.BroodTaken(removed.On, Share(removed.Share))],
        ColonySplit split => [split.Parent == colony ? Given(split) : Made(split, season)],
        ColoniesUnited united when united.Into == colony && united.Colony != colony => [Joined(united, season, depth)],
        _ => [],
    };

    // Controls that work through bees and brood, by what the data says they do; the keeper's own are like one of those.
    private IEnumerable<BeeEvent> Husbandry(Course course)
    {
        if (_controls.Value.Find(course.Agent) is not { } agent)
            return [];
        return agent.Model.Action switch
        {
            ControlAction.Requeen => OfQueen(new QueenRecord(course.Colony, course.Start, QueenEvent.Introduced)),

            // The split itself, with its frames, is mostly in the book too; then it is not counted twice.
            ControlAction.Split when state.HappeningsOf(course.Colony).Any(one => one.Facts is ColonySplit && Math.Abs(one.On.DayNumber - course.Start.DayNumber) <= SameVisit) => [],
            _ => ControlEffects.BeeEvents(agent.Model, course.Start, course.End ?? course.PlannedEnd ?? course.Start, _frames),
        };
    }

    private IEnumerable<BeeEvent> OfQueen(QueenRecord queen) => queen.Event switch
    {
        QueenEvent.Lost => [BeeEvent.Queen(queen.On, BeeEventKind.QueenLost)],
        QueenEvent.Caged => [BeeEvent.Queen(queen.On, BeeEventKind.QueenCaged)],
        QueenEvent.Released => [BeeEvent.Queen(queen.On, BeeEventKind.QueenReleased)],
        QueenEvent.NewLaying => [BeeEvent.Queen(queen.On, BeeEventKind.NewQueenLaying)],
        QueenEvent.Swarmed => [BeeEvent.Swarmed(queen.On, queen.ShareOfBees is { } share ? Share(share) : null)],

        // The old queen's laying ends; the new one lays once she has been freed.
        QueenEvent.Introduced =>
        [
            BeeEvent.Queen(queen.On, BeeEventKind.QueenCaged),
            BeeEvent.Queen(Moved(queen.On, (int)Math.Round(_queens.AfterHiving)), BeeEventKind.NewQueenLaying),
        ],
        _ => [],
    };

    private IEnumerable<BeeEvent> OfBeginning(ColonyBegan began)
    {
        var bees = began.KilogramsOfBees is { } kilograms ? Number(kilograms * _frames.BeesPerKilogram.Value) : OfBees(began.FramesOfBees);
        return began.As switch
        {
            ColonyBeginning.Package or ColonyBeginning.Swarm => [BeeEvent.Hived(began.On, bees ?? _frames.PackageBees.Value, _queens)],
            ColonyBeginning.Nucleus =>
            [
                BeeEvent.Began(
                    began.On, bees ?? _frames.BeesOn(_frames.NucleusFramesOfBees.Value), _frames.BroodOn(began.FramesOfBrood ?? _frames.NucleusFramesOfBrood.Value)),
            ],

            // A whole colony of which nothing was counted is the usual one of the site.
            ColonyBeginning.Whole when bees is { } counted => [BeeEvent.Began(began.On, counted, OfBrood(began.FramesOfBrood) ?? counted * BroodToBees)],
            _ => [],
        };
    }

    /// <summary>Cells of brood that go with each bee where only the bees were counted: as in a nucleus.</summary>
    private double BroodToBees =>
        _frames.NucleusFramesOfBrood.Value * _frames.BroodCellsPerFrame.Value / Math.Max(_frames.NucleusFramesOfBees.Value * _frames.BeesPerFrame.Value, 1);

    private BeeEvent Given(ColonySplit split) => Numbers(split) is var (bees, brood)
        ? BeeEvent.Gave(split.On, bees, brood)
        : BeeEvent.Divided(split.On, _frames.SplitShareOfBees.Value, _frames.SplitShareOfBrood.Value);

    private BeeEvent Made(ColonySplit split, BroodSeason season) => Numbers(split) is var (bees, brood)
        ? BeeEvent.MadeWithoutQueen(split.On, bees, brood)
        : BeeEvent.MadeWithoutQueen(
            split.On, Number(_frames.SplitShareOfBees.Value * season.AdultsOn(split.On)), Number(_frames.SplitShareOfBrood.Value * season.BroodOn(split.On)));

    private (double Bees, double Brood)? Numbers(ColonySplit split) => (OfBees(split.FramesOfBees), OfBrood(split.FramesOfBrood)) switch
    {
        ({ } bees, { } brood) => (bees, brood),
        ({ } bees, null) => (bees, Number(bees * BroodToBees)),
        (null, { } brood) => (Number(brood / BroodToBees), brood),
        _ => null,
    };

    private BeeEvent Joined(ColoniesUnited united, BroodSeason season, int depth)
    {
        if (depth >= DeepestUnion || !state.Colonies.ContainsKey(united.Colony))
            return BeeEvent.Joined(united.On, season.AdultsOn(united.On), season.BroodOn(united.On));

        // As many days as brood takes to grow up, so that all of it is counted.
        var lives = season.Lives;
        var first = Moved(united.On, -lives.WorkerOpenDays - lives.WorkerSealedDays);
        var other = Bees(united.Colony, first, united.On, united.On, depth + 1).Course;
        double cells = 0;
        foreach (var cell in other.WorkerSealed[Math.Max(other.Days - lives.WorkerSealedDays, 0)..])
            cells += cell;
        var brood = cells * (lives.WorkerOpenDays + lives.WorkerSealedDays) / lives.WorkerSealedDays;
        return BeeEvent.Joined(united.On, Number(other.Adults[^1]), Number(brood));
    }

    private double? OfBees(double? frames) => frames is { } count ? _frames.BeesOn(count) : null;

    private double? OfBrood(double? frames) => frames is { } count ? _frames.BroodOn(count) : null;

    private static DateOnly Moved(DateOnly day, int days) =>
        DateOnly.FromDayNumber(Math.Clamp(day.DayNumber + days, DateOnly.MinValue.DayNumber, DateOnly.MaxValue.DayNumber));

    // Entries of other devices were not checked again here: what cannot be is brought to the nearest that can.
    private static double Number(double value) => double.IsNaN(value) ? 0 : Math.Clamp(value, 0, 1e6);

    private static double Share(double share) => double.IsNaN(share) ? 0 : Math.Clamp(share, 0, 1);
}
