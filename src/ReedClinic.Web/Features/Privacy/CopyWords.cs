using ReedClinic.Domain.Intake;

namespace ReedClinic.Web.Features.Privacy;

/// <summary>What was answered, in plain words, for the table of a copy.</summary>
internal static class CopyWords
{
    internal static string Of(Permission permission) => permission switch
    {
        Permission.AdviseOnly => "only advise",
        Permission.SafeChangesOnly => "safe changes only",
        _ => "take risks",
    };

    internal static string? Of(MadeHow? made) => made switch
    {
        MadeHow.Tied => "tied and scraped by hand",
        MadeHow.FromABlank => "finished from a blank",
        MadeHow.BoughtFinished => "bought finished",
        _ => null,
    };

    internal static string? Of(ReedUse? use) => use switch
    {
        ReedUse.Practice => "practice",
        ReedUse.Lessons => "lessons",
        ReedUse.Concert => "concerts",
        ReedUse.Spare => "a spare",
        _ => null,
    };
}
