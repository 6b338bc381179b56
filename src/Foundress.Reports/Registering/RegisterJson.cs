using System.Text.Json;
using Foundress.Book.Records;
using Foundress.Book.Registering;
using Foundress.Book.Wording;
using Foundress.Reports.Exports;

namespace Foundress.Reports.Registering;

/// <summary>Writes the register as JSON: days in ISO 8601, temperatures in degrees Celsius, a field that was not recorded left out.</summary>
public static class RegisterJson
{
    /// <summary>The register as JSON.</summary>
    /// <param name="register">The register.</param>
    public static string Write(Register register)
    {
        ArgumentNullException.ThrowIfNull(register);
        return JsonText.Write(json =>
        {
            json.WriteStartObject();
            json.WriteString("operation", register.Operation);
            json.WriteString("drawnUp", Say.IsoDay(register.Today));
            json.WriteString("part", register.FilterText);
            json.WriteBoolean("invented", register.Invented);
            json.WriteStartArray("records");
            foreach (var row in register.Rows)
                Row(json, row);
            json.WriteEndArray();
            json.WriteEndObject();
        });
    }

    /// <summary>The state as a word of the files: <c>holds</c>, <c>replaced</c> or <c>struck</c>.</summary>
    internal static string StateOf(RegisterState state) => state switch
    {
        RegisterState.Struck => "struck",
        RegisterState.Replaced => "replaced",
        _ => "holds",
    };

    private static void Row(Utf8JsonWriter json, RegisterRow row)
    {
        var facts = row.Facts;
        json.WriteStartObject();
        json.WriteString("entry", row.Entry.ToString());
        json.WriteString("use", facts.Control.ToString());
        json.WriteString("state", StateOf(row.State));
        if (row.Struck is { } struck)
            Strike(json, struck);
        json.WriteString("start", Say.IsoDay(facts.Start));
        json.Optional("end", row.End is { } end ? Say.IsoDay(end) : null);
        json.Optional("plannedEnd", facts.PlannedEnd is { } planned ? Say.IsoDay(planned) : null);
        json.Optional("days", row.Days);
        json.Texts("apiaries", row.Apiaries);
        json.Optional("latitude", row.Place?.Latitude);
        json.Optional("longitude", row.Place?.Longitude);
        json.Texts("colonies", row.Colonies);
        json.WriteString("agent", facts.Agent);
        json.WriteString("control", row.Control);
        json.Optional("ingredient", row.Ingredient);
        json.WriteBoolean("substance", row.IsSubstance);
        json.Optional("product", facts.Product);
        json.Optional("quantityEach", facts.Quantity);
        json.Optional("batch", facts.Batch);
        json.Optional("supplier", facts.Supplier);
        json.Optional("proofOfPurchase", facts.ProofOfPurchase);
        json.Optional("prescriber", facts.Prescriber);
        json.Optional("withdrawalDays", row.WithdrawalDays);
        json.Optional("withdrawalOver", row.WithdrawalOver is { } over ? Say.IsoDay(over) : null);
        json.Optional("givenBy", facts.By);
        json.Optional("reason", row.Reason);
        json.Texts("reasonJars", (facts.ReasonJars ?? []).Select(jar => jar.ToString()));
        json.Optional("airLow", facts.AirLow);
        json.Optional("airHigh", facts.AirHigh);
        json.Optional("weather", facts.Weather);
        json.WriteStartArray("endings");
        foreach (var ending in row.Ends)
            End(json, ending);
        json.WriteEndArray();
        json.Optional("outcome", row.Outcome);
        json.Optional("note", facts.Note);
        json.WriteString("writtenBy", row.Author);
        json.WriteString("writtenOn", row.Written.ToUniversalTime());
        json.WriteEndObject();
    }

    private static void End(Utf8JsonWriter json, RegisterEnd end)
    {
        json.WriteStartObject();
        json.WriteString("on", Say.IsoDay(end.On));
        json.WriteString("ending", end.Ending switch { ControlEnding.StoppedEarly => "stopped-early", ControlEnding.Partial => "partial", _ => "as-planned" });
        json.Texts("colonies", end.Colonies);
        json.Optional("reason", end.Reason);
        json.Optional("note", end.Note);
        if (end.Struck is { } struck)
            Strike(json, struck);
        json.WriteEndObject();
    }

    private static void Strike(Utf8JsonWriter json, RegisterStrike struck)
    {
        json.WriteStartObject("struck");
        json.WriteString("by", struck.By);
        json.WriteString("on", struck.At.ToUniversalTime());
        json.WriteString("reason", struck.Reason);
        json.WriteEndObject();
    }
}
