using System.Globalization;
using System.Text.Json;
using CsCheck;
using CsvHelper;
using Foundress.Book;
using Foundress.Book.Demo;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Registering;
using Foundress.Knowledge;
using Foundress.Reports.Registering;
using Foundress.Reports.Tests.Support;

namespace Foundress.Reports.Tests.Exports;

public sealed class RegisterWritersTests
{
    private static readonly DateOnly Today = new(2026, 9, 1);

    [Fact]
    public void Page_DemoBook_IsAsLookedAt() => Approve.Matches("register.html", RegisterHtml.Page(Demo()));

    [Fact]
    public void Table_Strikes_AreCrossedOutWithReasonAndHand()
    {
        var table = RegisterHtml.Table(Written("2 strips", struck: true));
        Assert.Contains("<tr class=\"gone\">", table, StringComparison.Ordinal);
        Assert.Contains("<del>", table, StringComparison.Ordinal);
        Assert.Contains("Struck out by tester on 1 Jan 1970, 00:00 UTC: wrong hive", table, StringComparison.Ordinal);
    }

    [Fact]
    public void Gaps_WhatTheRegisterAsksForAndTheRecordDoesNotSay_IsNamed()
    {
        var thin = Written("2 strips", struck: false);
        Assert.Equal(["product", "batch", "supplier", "proof of purchase", "withdrawal period", "given by"], RegisterGaps.Of(Assert.Single(thin.Rows)));
        Assert.StartsWith("1 record says less than a register usually asks for: product (1), batch (1)", RegisterGaps.Sentence(thin), StringComparison.Ordinal);
        Assert.Contains("<small>Not filled in: </small>product, batch", RegisterHtml.Table(thin), StringComparison.Ordinal);
        // What was struck out asks for nothing any more.
        var struck = Written("2 strips", struck: true);
        Assert.Null(RegisterGaps.Sentence(struck));
        Assert.DoesNotContain("Not filled in", RegisterHtml.Table(struck), StringComparison.Ordinal);
    }

    // Whatever is written into a field, another library (CsvHelper) and a JSON reader give it back unchanged, and no page is broken by it.
    [Fact]
    public void Writers_AnyText_ComesBackUnchanged() =>
        Gen.String[Gen.Char[' ', '~'], 1, 40].Select(text => text + "\",;<&\n").Where(text => text.Trim().Length > 0).Sample(text =>
        {
            var register = Written(text, struck: false);
            using var csv = new CsvReader(new StringReader(RegisterCsv.Write(register)), CultureInfo.InvariantCulture);
            Assert.True(csv.Read() && csv.ReadHeader() && csv.Read());
            Assert.Equal(text, csv.GetField("quantity_each"));
            Assert.Equal(RegisterCsv.Columns.Count, csv.Parser.Count);
            using var json = JsonDocument.Parse(RegisterJson.Write(register));
            Assert.Equal(text, json.RootElement.GetProperty("records")[0].GetProperty("quantityEach").GetString());
            Assert.DoesNotContain("<&", RegisterHtml.Table(register), StringComparison.Ordinal);
        }, iter: 200);

    private static Register Demo()
    {
        var ledger = new Ledger();
        ledger.Add(DemoBook.Entries(KnowledgeBase.Load(), DemoBook.DefaultSeed, Today));
        return new Registers(ledger.Entries, ledger.State, KnowledgeBase.Load(), Today, CultureInfo.InvariantCulture).Of(new RegisterFilter(), invented: true);
    }

    private static Register Written(string quantity, bool struck)
    {
        var ledger = new Ledger();
        var colony = new ColonyId(new Guid(2, 0, 0, new byte[8]));
        var use = new ControlRecord(new ControlId(new Guid(3, 0, 0, new byte[8])), "thymol", Today.AddDays(-40), [colony], Today.AddDays(-12), Quantity: quantity);
        Add(ledger, 1, new ApiaryRecord(new ApiaryId(new Guid(1, 0, 0, new byte[8])), "Hill"));
        Add(ledger, 2, new ColonyRecord(colony, "7", new ApiaryId(new Guid(1, 0, 0, new byte[8]))));
        var entry = Add(ledger, 3, use);
        if (struck)
            Add(ledger, 4, new Strike(entry.Id, "wrong hive"));
        return new Registers(ledger.Entries, ledger.State, KnowledgeBase.Load(), Today, CultureInfo.InvariantCulture).Of(new RegisterFilter());
    }

    private static Entry Add(Ledger ledger, int number, Foundress.Book.Records.Record record)
    {
        var entry = new Entry(new EntryId(new Guid(100 + number, 0, 0, new byte[8])), "home", "tester", "d", new HybridTime(number, 0), RecordKinds.Of(record), 1, RecordJson.Write(record));
        ledger.Add([entry]);
        return entry;
    }
}
