namespace ReedClinic.Domain.People;

/// <summary>What an account may be in the studio. An account can be more than one of these.</summary>
public enum Role
{
    /// <summary>Sends reeds and reads letters; sees only what is their own.</summary>
    Student,

    /// <summary>Works at the bench; sees every batch of the studio.</summary>
    Teacher,

    /// <summary>Runs the studio: everything a teacher may do, and who is one.</summary>
    Owner,
}

/// <summary>Who asks. The first argument of every operation, so that ownership is part of the query.</summary>
/// <param name="Account">The account that is signed in.</param>
/// <param name="Student">The person behind the account, when that person sends reeds.</param>
/// <param name="IsTeacher">May work at the bench.</param>
/// <param name="IsOwner">May run the studio.</param>
public sealed record Actor(AccountId Account, StudentId? Student, bool IsTeacher, bool IsOwner)
{
    /// <summary>The students for whom this person answers as a guardian, and has not withdrawn.</summary>
    public IReadOnlyList<StudentId> Wards { get; init; } = [];

    /// <summary>True when they answer for a student, or did until they took it back.</summary>
    public bool Guards { get; init; }

    /// <summary>The browser they are signed in with; null where none is behind the question, as in a command.</summary>
    public SessionId? Session { get; init; }

    /// <summary>True for the first minutes after they proved who they are: see <see cref="SessionRules.FreshFor"/>.</summary>
    public bool IsFresh { get; init; }

    /// <summary>True when this account is to hold staff rights, but hasn't yet shown the second step that they need.</summary>
    public bool OwesSecondStep { get; init; }

    /// <summary>True for a teacher or an owner: those who see the batches of every student.</summary>
    public bool WorksHere => IsTeacher || IsOwner;
}
