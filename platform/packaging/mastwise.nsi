; The installer for one person: no administrator is asked for. What a person has recorded is in
; %LOCALAPPDATA%\Mastwise and is never touched.
Unicode true
Target amd64-unicode
SetCompressor zlib
Name "Mastwise"
OutFile "${OUTPUT}"
Icon "${ICON}"
UninstallIcon "${ICON}"
RequestExecutionLevel user
InstallDir "$LOCALAPPDATA\Programs\Mastwise"
!define KEY "Software\Microsoft\Windows\CurrentVersion\Uninstall\Mastwise"
InstallDirRegKey HKCU "${KEY}" "InstallLocation"

Page directory
Page instfiles
UninstPage uninstConfirm
UninstPage instfiles

Section
  RMDir /r "$INSTDIR\assets"
  SetOutPath "$INSTDIR"
  File /r "${STAGE}/*"
  WriteUninstaller "$INSTDIR\uninstall.exe"
  CreateShortcut "$SMPROGRAMS\Mastwise.lnk" "$INSTDIR\mastwise-window.exe"
  WriteRegStr HKCU "${KEY}" "DisplayName" "Mastwise"
  WriteRegStr HKCU "${KEY}" "DisplayVersion" "${VERSION}"
  WriteRegStr HKCU "${KEY}" "DisplayIcon" "$INSTDIR\mastwise.exe"
  WriteRegStr HKCU "${KEY}" "InstallLocation" "$INSTDIR"
  WriteRegStr HKCU "${KEY}" "UninstallString" '"$INSTDIR\uninstall.exe"'
  WriteRegStr HKCU "${KEY}" "QuietUninstallString" '"$INSTDIR\uninstall.exe" /S'
  WriteRegDWORD HKCU "${KEY}" "EstimatedSize" ${SIZE_KB}
  WriteRegDWORD HKCU "${KEY}" "NoModify" 1
  WriteRegDWORD HKCU "${KEY}" "NoRepair" 1
SectionEnd

; Only what was installed: the folder stays if anything else is in it.
Section "Uninstall"
  RMDir /r "$INSTDIR\assets"
  Delete "$INSTDIR\mastwise.exe"
  Delete "$INSTDIR\mastwise-window.exe"
  Delete "$INSTDIR\mastwise.ico"  ; of earlier versions
  Delete "$INSTDIR\LICENSE.txt"
  Delete "$INSTDIR\uninstall.exe"
  RMDir "$INSTDIR"
  Delete "$SMPROGRAMS\Mastwise.lnk"
  DeleteRegKey HKCU "${KEY}"
SectionEnd
