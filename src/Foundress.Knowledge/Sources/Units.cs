using Foundress.Knowledge.Sources;

namespace Foundress.Knowledge;

/// <summary>The units a figure may carry. A closed list: a misspelt unit is refused, and no unit is turned into another without the caller asking.</summary>
public static class Units
{
    /// <summary>Mites for each 100 adult bees.</summary>
    public const string MitesPer100Bees = "mites/100 bees";

    /// <summary>Mites for each roll of about 300 adult bees.</summary>
    public const string MitesPerRoll = "mites/300-bee roll";

    /// <summary>Mites for each 50 grams of adult bees.</summary>
    public const string MitesPer50Grams = "mites/50 g bees";

    /// <summary>Mites for each 10 grams of adult bees.</summary>
    public const string MitesPer10Grams = "mites/10 g bees";

    /// <summary>Mites fallen on the board in a day.</summary>
    public const string MitesPerDay = "mites/day";

    /// <summary>Mites fallen on a sticky board in one night.</summary>
    public const string MitesPerNight = "mites/night";

    /// <summary>Mites fallen on a sticky board in 48 hours.</summary>
    public const string MitesPer48Hours = "mites/48 h";

    /// <summary>Mites in one wash, whatever the number of bees.</summary>
    public const string MitesPerWash = "mites/wash";

    /// <summary>Per cent.</summary>
    public const string Percent = "%";

    /// <summary>A number of adult bees.</summary>
    public const string Bees = "bees";

    /// <summary>Milligrams for each bee.</summary>
    public const string MilligramsPerBee = "mg/bee";

    /// <summary>Millilitres.</summary>
    public const string Millilitres = "mL";

    /// <summary>Minutes.</summary>
    public const string Minutes = "min";

    /// <summary>Days.</summary>
    public const string Days = "d";

    /// <summary>A number of colonies.</summary>
    public const string Colonies = "colonies";

    /// <summary>A number of combs in their frames.</summary>
    public const string Frames = "frames";

    /// <summary>Times in a year.</summary>
    public const string TimesPerYear = "times/year";

    /// <summary>Eggs laid in a day.</summary>
    public const string EggsPerDay = "eggs/day";

    /// <summary>A number of cells of a comb.</summary>
    public const string Cells = "cells";

    /// <summary>Per cent of what there is, each day.</summary>
    public const string PercentPerDay = "%/day";

    /// <summary>Days for each degree of latitude.</summary>
    public const string DaysPerDegree = "d/degree";

    /// <summary>Degrees of latitude.</summary>
    public const string Degrees = "degrees";

    /// <summary>Metres.</summary>
    public const string Metres = "m";

    /// <summary>A number of mites.</summary>
    public const string Mites = "mites";

    /// <summary>A share of what is there, lost in a day.</summary>
    public const string PerDay = "1/d";

    /// <summary>Degrees Celsius.</summary>
    public const string DegreesCelsius = "°C";

    /// <summary>A number of jars.</summary>
    public const string Jars = "jars";

    /// <summary>Grams.</summary>
    public const string Grams = "g";

    /// <summary>Mites in a whole colony for each mite that falls on the board in a day.</summary>
    public const string MitesPerDailyMite = "mites per daily mite";

    /// <summary>A pure number: a ratio, a probability from 0 to 1, or a standard deviation of a logarithm.</summary>
    public const string One = "1";

    /// <summary>Every unit a figure may carry.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        MitesPer100Bees, MitesPerRoll, MitesPer50Grams, MitesPer10Grams, MitesPerDay, MitesPerNight, MitesPer48Hours, MitesPerWash,
        Percent, Bees, MilligramsPerBee, Millilitres, Minutes, Days, Colonies, Frames, TimesPerYear, Jars, Grams,
        EggsPerDay, Cells, PercentPerDay, DaysPerDegree, Degrees, Metres, Mites, PerDay, DegreesCelsius, MitesPerDailyMite, One,
    ];

    /// <summary>A unit as people read it, in the language of this thread's reader.</summary>
    /// <param name="unit">One of <see cref="All"/>.</param>
    public static string Name(string unit) => unit switch
    {
        MitesPer100Bees => UnitTexts.MitesPer100Bees,
        MitesPerRoll => UnitTexts.MitesPerRoll,
        MitesPer50Grams => UnitTexts.MitesPer50Grams,
        MitesPer10Grams => UnitTexts.MitesPer10Grams,
        MitesPerDay => UnitTexts.MitesPerDay,
        MitesPerNight => UnitTexts.MitesPerNight,
        MitesPer48Hours => UnitTexts.MitesPer48Hours,
        MitesPerWash => UnitTexts.MitesPerWash,
        Bees => UnitTexts.Bees,
        MilligramsPerBee => UnitTexts.MilligramsPerBee,
        Millilitres => UnitTexts.Millilitres,
        Days => UnitTexts.Days,
        Colonies => UnitTexts.Colonies,
        Frames => UnitTexts.Frames,
        TimesPerYear => UnitTexts.TimesPerYear,
        EggsPerDay => UnitTexts.EggsPerDay,
        Cells => UnitTexts.Cells,
        PercentPerDay => UnitTexts.PercentPerDay,
        DaysPerDegree => UnitTexts.DaysPerDegree,
        Degrees => UnitTexts.Degrees,
        Mites => UnitTexts.Mites,
        PerDay => UnitTexts.PerDay,
        Jars => UnitTexts.Jars,
        MitesPerDailyMite => UnitTexts.MitesPerDailyMite,
        _ => unit, // Signs that are the same in every language: %, min, m, g, °C and the pure number.
    };
}
