using ReedClinic.Domain.People;

namespace ReedClinic.Web.Features.People;

/// <summary>What was typed or pressed on the pages about people.</summary>
public sealed class PeopleForm
{
    /// <summary>Made when the form opened.</summary>
    public Guid Operation { get; set; }

    /// <summary>The address to write to.</summary>
    public string? Email { get; set; }

    /// <summary>What they are invited to be: a role, or <c>Begin</c>.</summary>
    public string? As { get; set; }

    /// <summary>The button that was pressed: what to do, a colon, and to whom or with which link.</summary>
    public string? Do { get; set; }

    /// <summary>The button's two halves; null when there are none.</summary>
    public (string What, Guid Whom)? Pressed() =>
        Do?.Split(':') is [var what, var whom] && Guid.TryParse(whom, out var id) ? (what, id) : null;

    /// <summary>The form's operation.</summary>
    public OperationId ToOperation() => new(Operation);
}
