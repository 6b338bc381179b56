using System.Globalization;
using Foundress.Book.Judging;
using Foundress.Book.Records;
using Foundress.Book.Rules;
using Foundress.Book.State;
using Foundress.Knowledge;

namespace Foundress.Web.Pages.Counts;

/// <summary>A form about one count of a colony on another scale: the answer follows the typing.</summary>
public abstract class OtherCountForm : ColonyFormPage
{
    /// <summary>The known methods, lines and factors.</summary>
    protected static KnowledgeBase Knowledge => KnowledgeBase.Load();

    /// <summary>Where the colony stood on a day.</summary>
    protected Apiary? ApiaryOn(DateOnly day) => Session.State.Apiaries.GetValueOrDefault(Colony!.ApiaryOn(day));

    /// <summary>Reads counts by the keeper's settings.</summary>
    protected OtherCountReader Reader => new(Knowledge, JudgingPolicy.Of(Session.State, Knowledge), CultureInfo.CurrentCulture);

    /// <summary>What is unusual about a record that could be kept.</summary>
    protected IEnumerable<string> Doubts(Record record) => Check(record, Gravity.Doubt).Select(problem => problem.Message);

    /// <summary>Whether a record can be kept as it stands.</summary>
    protected bool Sound(Record record) => !Check(record, Gravity.Error).Any();

    /// <summary>Notes in the form what forbids keeping a record.</summary>
    /// <param name="form">The form.</param>
    /// <param name="record">The record.</param>
    /// <param name="fieldOf">The form's field for a field of the record.</param>
    protected void Judge(FormReader form, Record record, Func<string, string> fieldOf)
    {
        foreach (var problem in Check(record, Gravity.Error))
            form.Add(fieldOf(problem.Field), problem.Message);
    }

    private IEnumerable<Problem> Check(Record record, Gravity gravity) =>
        RecordRules.Check(record, Session.State, Knowledge, Session.Today).Where(problem => problem.Gravity == gravity);
}
