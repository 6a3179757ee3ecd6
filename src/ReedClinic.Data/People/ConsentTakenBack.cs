using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Data.People;

/// <summary>What is said where work was refused because a guardian took their consent back.</summary>
internal static class ConsentTakenBack
{
    /// <summary>For those who work here.</summary>
    internal static Problem Unworked { get; } = new("", "No guardian agrees to this any more: the reeds go home unworked. Nothing was saved.");

    /// <summary>For the student.</summary>
    internal static Problem Paused { get; } = new("", "Your guardian has taken their consent back, so nothing can be written or sent. What you have can still be read. What you can do: talk with them; they can agree again at any time.");

    /// <summary>For a student whose guardian took their consent back, or hasn't given it yet.</summary>
    internal static Problem Unagreed { get; } = new("", "No guardian agrees at the moment that you send reeds here, so nothing can be written or sent. What you have can still be read. What you can do: ask a parent or guardian to agree, or to agree again; your first page leads there.");
}
